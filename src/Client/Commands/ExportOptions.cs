using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary>The options that all exports share: in what format, and where to.</summary>
internal sealed class ExportOptions
{
    private static readonly Dictionary<string, ExportFormat> Formats = new() { ["csv"] = ExportFormat.Csv, ["json"] = ExportFormat.Json, ["html"] = ExportFormat.Html };

    private readonly Option<string> _format = new("--format") { Description = "csv, json, or html: a sheet for printing.", DefaultValueFactory = _ => "html" };
    private readonly Option<string?> _out = new("--out") { Description = "Where to write it. Otherwise beside you, under its own name; - is standard output.", HelpName = "FILE" };

    /// <summary>Both, on a command.</summary>
    public ExportOptions(Command command)
    {
        _format.AcceptOnlyFromAmong([.. Formats.Keys]);
        command.Options.Add(_format);
        command.Options.Add(_out);
    }

    /// <summary>What was asked for.</summary>
    public ExportFormat Format(ParseResult parsed) => Formats[parsed.GetValue(_format)!];

    /// <summary>Writes a file that is here, and says where.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="shell">Where standard output is.</param>
    /// <param name="fileName">Its own name, from outside: it names a file here, not a path.</param>
    /// <param name="content">UTF-8.</param>
    /// <exception cref="ClientException">SL-445: it cannot be written.</exception>
    public void Write(ParseResult parsed, Shell shell, string fileName, Google.Protobuf.ByteString content)
    {
        var path = parsed.GetValue(_out) ?? Path.GetFileName(fileName);
        if (path == "-")
        {
            shell.Out.Write(content.ToStringUtf8());
            shell.Out.Flush();
            return;
        }

        InputFile.Write(path, content.Span);
        shell.WriteLine($"Wrote {path}.");
    }
}
