using ScaleLink.Measure.Sentences;

namespace ScaleLink.Client.Runtime;

/// <summary>Loads, lengths and sentences in the units of this terminal.</summary>
internal static class UnitWriting
{
    private const int LongestSentence = 400;

    /// <summary>A sentence as this terminal shows it.</summary>
    public static string Tell(this Glyphs glyphs, Sentence said, int most = LongestSentence) => glyphs.Say(PeerText.Clean(said.In(glyphs.Units.Mass, glyphs.Units.Length), most));

    /// <summary>What is wrong, what to do, and the code.</summary>
    public static string Tell(this Glyphs glyphs, Diagnostic wrong) => glyphs.Tell(wrong.Whole, 2 * LongestSentence);

    /// <summary>A sentence of this program: as it is, spaces and all.</summary>
    public static string Line(this Glyphs glyphs, Sentence said) => said.In(glyphs.Units.Mass, glyphs.Units.Length);

    /// <summary>A mass as a number for a column whose head names the unit.</summary>
    public static string Kg(this Glyphs glyphs, double kilograms, string format) => (kilograms / glyphs.Units.Mass.Factor).ToString(format);

    /// <summary>The sign of loads: "kg", "lb".</summary>
    public static string MassSign(this Glyphs glyphs) => glyphs.Units.Mass.Sign;

    /// <summary>The sign of lengths: "mm", "in".</summary>
    public static string LengthSign(this Glyphs glyphs) => glyphs.Units.Length.Sign;

    /// <summary>Cleans the words of a sentence and keeps its loads and lengths; where that tears them apart it becomes words in kg and mm.</summary>
    public static Sentence Cleaned(this Sentence said, int most) => Sentence.Parse(PeerText.Clean(said.Text, most), said.Arguments) ?? PeerText.Clean(said.ToString(), most);
}
