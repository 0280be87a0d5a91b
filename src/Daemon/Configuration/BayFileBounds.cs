using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ScaleLink.Daemon.Configuration;

/// <summary>What no bay file needs, and what would cost minutes or the stack to be read: it is refused with one sentence instead.</summary>
internal static class BayFileBounds
{
    /// <summary>The largest that is read, bytes.</summary>
    public const int LargestBytes = 1_000_000;

    private const int DeepestNesting = 16;

    // A bay has four pads, each with a table of registers for its loads and for its tilt.
    private const int MostPads = 16, MostParts = 5_000;

    private static readonly TomlSerializerOptions Nesting = new() { MaxDepth = DeepestNesting };

    /// <summary>What is said of a file that is nested deeper.</summary>
    public static Diagnostic TooDeep { get; } = FileMistake.At(0, ConfigurationCodes.FileBeyondBounds,
        $"Lists or tables stand more than {DeepestNesting} deep within each other.", "See that it is the bay file; nothing in one stands so deep.");

    /// <summary>What is said of a file that is larger.</summary>
    public static Diagnostic TooLarge { get; } = FileMistake.At(0, ConfigurationCodes.FileBeyondBounds,
        $"The bay file is larger than {LargestBytes / 1_000_000} MB.", "See that --bay names the bay file.");

    /// <summary>The text as TOML, with the mistakes of its syntax; nothing when lists or tables stand too deep within each other to be read.</summary>
    public static DocumentSyntax? Parse(string text, string path)
    {
        try
        {
            return SyntaxParser.Parse(text, Nesting, path);
        }
        catch (TomlException)
        {
            // Mistakes of syntax are told in the document: the parser throws for its depth alone.
            return null;
        }
    }

    /// <summary>What is wrong with a file of too many blocks or keys, in one sentence instead of one for each.</summary>
    public static Diagnostic? TooMuch(DocumentSyntax document)
    {
        var pads = document.Tables.Count(t => t.Name?.ToString().Trim() == "pads");
        var parts = document.KeyValues.ChildrenCount + document.Tables.Sum(t => 1 + t.Items.ChildrenCount);
        return pads > MostPads ? Beyond($"The file has {pads} [[pads]] blocks.", "Add one for each pad: a bay has four.")
            : parts > MostParts ? Beyond($"The file has {parts} blocks and keys.", $"See that it is the bay file; at most {MostParts} are read.")
            : null;
    }

    private static Diagnostic Beyond(Sentence message, Sentence remedy) => FileMistake.At(0, ConfigurationCodes.FileBeyondBounds, message, remedy);
}
