using ScaleLink.Measure;
using Said = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Api.V1;

public sealed partial class Sentence
{
    /// <summary>As it travels beside its English text; null where there is no argument in it.</summary>
    public static Sentence? Of(Said said) => said.Arguments.Count > 0 ? Whole(said) : null;

    /// <summary>The same for a list, where each has its place.</summary>
    public static Sentence Whole(Said said) => new() { Pattern = said.Text, Arguments = { said.Arguments.Select(Argument.Of) } };

    /// <summary>What travelled as a text and, perhaps, as a sentence beside it. The text alone where the two cannot be brought together.</summary>
    public static Said Read(string text, Sentence? typed) => typed?.Said ?? text;

    // Null when pattern and arguments do not belong together, or an argument is of a kind that is not known here.
    private Said? Said => Arguments.Select(q => q.Measured).ToList() is var all && all.TrueForAll(q => q is not null)
        ? Measure.Sentences.Sentence.Parse(Pattern, [.. all.OfType<Measure.Sentences.Argument>()])
        : null;
}

public sealed partial class Argument
{
    private const uint MostDecimals = 6;

    internal Measure.Sentences.Argument? Measured => Unit is { } unit && (!HasDecimals || Decimals <= MostDecimals)
        ? new(Value, unit, HasDecimals ? (int)Decimals : null) { IsShortest = Shortest, IsSigned = Signed, IsBare = Bare }
        : null;

    private Unit? Unit => Kind switch
    {
        ArgumentKind.Mass => Unit.Kilogram,
        ArgumentKind.Length => Unit.Millimetre,
        _ => null,
    };

    internal static Argument Of(Measure.Sentences.Argument said)
    {
        var argument = new Argument
        {
            Value = said.Value, Kind = said.Unit == Unit.Millimetre ? ArgumentKind.Length : ArgumentKind.Mass,
            Shortest = said.IsShortest, Signed = said.IsSigned, Bare = said.IsBare,
        };
        if (said.Decimals is { } decimals)
            argument.Decimals = (uint)decimals;
        return argument;
    }
}
