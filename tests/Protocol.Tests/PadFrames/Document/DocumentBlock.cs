using Shared;

namespace ScaleLink.Protocol.Tests.PadFrames.Document;

/// <summary>A fenced block of docs/pad-frames.md: its label, and lines of a name and a value.</summary>
sealed class DocumentBlock(string label, IReadOnlyList<string> lines)
{
    const string Fence = "```";

    public string Label { get; } = label;

    public string Text => string.Join('\n', lines);

    /// <summary>The value behind a name, with the lines that go on below it.</summary>
    public string this[string name]
    {
        get
        {
            var start = lines.ToList().FindIndex(line => line.StartsWith(name + ' ', StringComparison.Ordinal) || line == name);
            Assert.True(start >= 0, $"A block '{Label}' of docs/pad-frames.md has no line '{name}'.");
            var further = lines.Skip(start + 1).TakeWhile(line => line.StartsWith(' '));
            return string.Join(' ', new[] { lines[start][name.Length..].Trim() }.Concat(further.Select(line => line.Trim())));
        }
    }

    public byte[] Bytes(string name) => Hex.Bytes(this[name]);

    public long Number(string name) => this[name].StartsWith("0x", StringComparison.Ordinal)
        ? Convert.ToInt64(this[name][2..], 16)
        : long.Parse(this[name]);

    public double? Optional(string name) => this[name] == "absent" ? null : double.Parse(this[name]);

    /// <summary>The blocks with this first word, at least one.</summary>
    public static IReadOnlyList<DocumentBlock> All(string word)
    {
        var blocks = new List<DocumentBlock>();
        List<string>? lines = null;
        var label = "";
        foreach (var line in RepositoryRoot.Read("docs", "pad-frames.md").Split('\n'))
        {
            if (!line.StartsWith(Fence, StringComparison.Ordinal))
                lines?.Add(line);
            else if (lines is null)
                (label, lines) = (line[Fence.Length..].Trim(), []);
            else
            {
                blocks.Add(new DocumentBlock(label, lines));
                lines = null;
            }
        }
        var found = blocks.Where(block => block.Label.Split(' ')[0] == word).ToArray();
        Assert.NotEmpty(found);
        return found;
    }
}
