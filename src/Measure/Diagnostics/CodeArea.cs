namespace ScaleLink.Measure.Diagnostics;

/// <summary>The codes of one area, each declared here once: a number that any area has taken already is refused when the area is loaded.</summary>
public sealed class CodeArea
{
    // 0 free, 1 taken: one place for each number there can be.
    private static readonly int[] Taken = new int[1000];

    private readonly List<Code> _codes = [];

    internal CodeArea(string title, string about) => (Title, About) = (title, about);

    /// <summary>Heads its part of the documentation.</summary>
    public string Title { get; }

    /// <summary>What the codes have in common.</summary>
    public string About { get; }

    /// <summary>All of them, as declared.</summary>
    public IReadOnlyList<Code> Codes => _codes;

    /// <summary>True for a code of this area.</summary>
    public bool Holds(Code code) => _codes.Contains(code);

    internal Code Declare(int number, string meaning, string remedy)
    {
        if (Interlocked.Exchange(ref Taken[number], 1) != 0)
            throw new InvalidOperationException($"Code {number} of \"{Title}\" ({meaning}) is declared twice.");
        var code = Code.Declare(number, meaning, remedy);
        _codes.Add(code);
        return code;
    }
}
