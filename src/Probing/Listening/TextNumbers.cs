using System.Text;
using ScaleLink.Probing.Recognition;

namespace ScaleLink.Probing.Listening;

/// <summary>Every number of each line, also of those that the pattern leaves aside: which of them is a load is seen when the pad is loaded.</summary>
internal sealed class TextNumbers(FoundText device) : ISpokenNumbers
{
    private const byte EndOfText = 3;
    private const int LongestKept = 1024, CheckLength = 2;
    private readonly List<byte> _waiting = [];
    private bool _isWhole;

    public IReadOnlyList<IReadOnlyList<double>> Take(byte[] bytes)
    {
        var lines = new List<IReadOnlyList<double>>();
        foreach (var value in bytes)
        {
            if (value is not ((byte)'\r' or (byte)'\n' or EndOfText))
            {
                if (_waiting.Count < LongestKept)
                    _waiting.Add(value);
                continue;
            }

            // What comes before the first end may be the rest of a line.
            if (_isWhole && Numbers(Encoding.ASCII.GetString([.. _waiting])) is { } numbers)
                lines.Add(numbers);
            _isWhole = true;
            _waiting.Clear();
        }

        return lines;
    }

    // A checksum of hexadecimal digits can look like one number more.
    private List<double>? Numbers(string line) =>
        new[] { line, line.Length > CheckLength ? line[..^CheckLength] : "" }.Select(l => LineShape.Cut(l).Numbers).FirstOrDefault(n => n.Count == device.Numbers.Count);
}
