using ScaleLink.Measure;
using Said = ScaleLink.Measure.Sentences.Sentence;

namespace ScaleLink.Api.V1;

public sealed partial class Sentence
{
    /// <summary>As it travels beside its English text; null where there is no quantity in it.</summary>
    public static Sentence? Of(Said said) => said.Quantities.Count > 0 ? Whole(said) : null;

    /// <summary>The same for a list, where each has its place.</summary>
    public static Sentence Whole(Said said) => new() { Pattern = said.Text, Quantities = { said.Quantities.Select(Quantity.Of) } };

    /// <summary>What travelled as a text and, perhaps, as a sentence beside it. The text alone where the two cannot be brought together.</summary>
    public static Said Read(string text, Sentence? typed) => typed?.Said ?? text;

    // Null when pattern and quantities do not belong together, or a quantity is of a kind that is not known here.
    private Said? Said => Quantities.Select(q => q.Measured).ToList() is var all && all.TrueForAll(q => q is not null)
        ? Measure.Sentences.Sentence.Parse(Pattern, [.. all.OfType<Measure.Sentences.Quantity>()])
        : null;
}

public sealed partial class Quantity
{
    private const uint MostDecimals = 6;

    internal Measure.Sentences.Quantity? Measured => Unit is { } unit && (!HasDecimals || Decimals <= MostDecimals)
        ? new(Value, unit, HasDecimals ? (int)Decimals : null) { IsShortest = Shortest, IsSigned = Signed, IsBare = Bare }
        : null;

    private Unit? Unit => Kind switch
    {
        QuantityKind.Mass => Unit.Kilogram,
        QuantityKind.Length => Unit.Millimetre,
        _ => null,
    };

    internal static Quantity Of(Measure.Sentences.Quantity said)
    {
        var quantity = new Quantity
        {
            Value = said.Value, Kind = said.Unit == Unit.Millimetre ? QuantityKind.Length : QuantityKind.Mass,
            Shortest = said.IsShortest, Signed = said.IsSigned, Bare = said.IsBare,
        };
        if (said.Decimals is { } decimals)
            quantity.Decimals = (uint)decimals;
        return quantity;
    }
}
