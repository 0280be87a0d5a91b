using Tomlyn.Syntax;

namespace ScaleLink.Daemon.Configuration;

/// <summary>The tables of a bay file by name; notes those that nobody asks for.</summary>
internal sealed class TomlTables
{
    private readonly ILookup<string, TableSyntaxBase> _tables;
    private readonly List<Diagnostic> _mistakes;
    private readonly HashSet<string> _asked = [];

    public TomlTables(DocumentSyntax document, List<Diagnostic> mistakes)
    {
        _tables = document.Tables.Cast<TableSyntaxBase>().ToLookup(t => t.Name!.ToString().Trim());
        _mistakes = mistakes;
    }

    /// <summary>The one table of that name; an empty one when the file has none.</summary>
    public TomlBlock One(string name)
    {
        _asked.Add(name);
        var found = _tables[name].ToList();
        foreach (var extra in found.Skip(1))
            _mistakes.Add(FileMistake.At(LineOf(extra), ConfigurationCodes.BlockMisplaced, $"[{name}] stands twice.", "Join the two."));
        foreach (var list in found.Take(1).Where(t => t is TableArraySyntax))
            _mistakes.Add(FileMistake.At(LineOf(list), ConfigurationCodes.BlockMisplaced, $"[[{name}]] stands where one [{name}] is meant.", $"Write [{name}]."));
        return found.Count == 0
            ? new TomlBlock(name, 0, [], _mistakes)
            : new TomlBlock(name, LineOf(found[0]), found[0].Items, _mistakes);
    }

    /// <summary>Every table of that name, in the order of the file.</summary>
    public IEnumerable<TomlBlock> Many(string name)
    {
        _asked.Add(name);
        foreach (var table in _tables[name])
        {
            if (table is not TableArraySyntax)
                _mistakes.Add(FileMistake.At(LineOf(table), ConfigurationCodes.BlockMisplaced, $"[{name}] stands where a list is meant.", $"Write [[{name}]]."));
            yield return new TomlBlock(name, LineOf(table), table.Items, _mistakes);
        }
    }

    /// <summary>The tables of that name that belong to <paramref name="parent"/>: those between it and the next table of its name.</summary>
    public IReadOnlyList<TomlBlock> Under(TomlBlock parent, string name, bool isList)
    {
        _asked.Add(name);
        var next = _tables[parent.Name].Select(LineOf).Where(line => line > parent.Line).DefaultIfEmpty(int.MaxValue).Min();
        var mine = _tables[name].Where(t => LineOf(t) > parent.Line && LineOf(t) < next).ToList();
        foreach (var wrong in mine.Where(t => t is TableArraySyntax != isList))
            _mistakes.Add(FileMistake.At(LineOf(wrong), ConfigurationCodes.BlockMisplaced, $"{name} is {(isList ? "a list" : "one block")} of its pad.", isList ? $"Write [[{name}]]." : $"Write [{name}]."));
        return [.. mine.Select(t => new TomlBlock(name, LineOf(t), t.Items, _mistakes))];
    }

    public void Finish()
    {
        foreach (var group in _tables.Where(g => !_asked.Contains(g.Key)))
            foreach (var table in group)
                _mistakes.Add(FileMistake.At(LineOf(table), ConfigurationCodes.KeyUnknown, $"[{group.Key}] is not known.", $"Known: {string.Join(", ", _asked.Order())}."));
    }

    private static int LineOf(TableSyntaxBase table) => table.Span.Start.Line + 1;
}
