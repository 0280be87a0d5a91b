using System.Net;
using System.Text;

namespace ScaleLink.Daemon.Reports;

/// <summary>Builds HTML; every text that is put in is escaped.</summary>
internal sealed class Html
{
    private readonly StringBuilder _text = new();

    /// <summary>An element around a text.</summary>
    public Html Text(string element, string text)
    {
        _text.Append('<').Append(element).Append('>').Append(Escape(text)).Append("</").Append(element).Append(">\n");
        return this;
    }

    /// <summary>A table; columns whose head begins with # hold numbers.</summary>
    public Html Table(IReadOnlyList<string> heads, IEnumerable<IReadOnlyList<string>> rows)
    {
        string Class(int column) => heads[column].StartsWith('#') ? " class=\"n\"" : "";
        _text.Append("<table>\n<thead><tr>");
        for (var i = 0; i < heads.Count; i++)
            _text.Append($"<th{Class(i)}>").Append(Escape(heads[i].TrimStart('#'))).Append("</th>");
        _text.Append("</tr></thead>\n<tbody>\n");
        foreach (var row in rows)
        {
            _text.Append("<tr>");
            for (var i = 0; i < row.Count; i++)
                _text.Append($"<td{Class(i)}>").Append(Escape(row[i])).Append("</td>");
            _text.Append("</tr>\n");
        }

        _text.Append("</tbody></table>\n");
        return this;
    }

    /// <summary>A table of names and values.</summary>
    public Html Facts(params IEnumerable<(string Name, string Value)> facts)
    {
        _text.Append("<dl>\n");
        foreach (var (name, value) in facts.Where(f => f.Value.Length > 0))
            _text.Append("<dt>").Append(Escape(name)).Append("</dt><dd>").Append(Escape(value)).Append("</dd>\n");
        _text.Append("</dl>\n");
        return this;
    }

    /// <summary>Markup that holds no text of people.</summary>
    public Html Raw(string markup)
    {
        _text.Append(markup);
        return this;
    }

    public override string ToString() => _text.ToString();

    public static string Escape(string text) => WebUtility.HtmlEncode(text);
}
