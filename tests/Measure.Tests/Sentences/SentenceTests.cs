using System.Globalization;
using System.Text.Json;
using ScaleLink.Measure;
using ScaleLink.Measure.Sentences;
using static ScaleLink.Measure.Sentences.Arguments;

namespace Measure.Tests.Sentences;

/// <summary>Factors by NIST Special Publication 811:2008, appendix B.8: 1 lb (avoirdupois) = 4.535 923 7 E-01 kg and 1 in = 2.54 E+01 mm, both exact.</summary>
public class SentenceTests
{
    private static string InPounds(Sentence sentence) => sentence.In(Unit.Pound, Unit.Millimetre);

    private static string InInches(Sentence sentence) => sentence.In(Unit.Kilogram, Unit.Inch);

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.05)]
    [InlineData(0.25)]
    [InlineData(-0.75)]
    [InlineData(12.3456)]
    [InlineData(-12.3456)]
    [InlineData(1048)]
    [InlineData(99999.95)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void In_kg_and_mm_it_is_the_text_that_plain_formatting_makes(double x)
    {
        var plain = CultureInfo.InvariantCulture;
        Assert.Equal(string.Create(plain, $"About {x:0} kg of {x:0.#} kg, {x:0.000} kg."), (Sentence)$"About {Kg(x):0} of {Kg(x):0.#}, {Kg(x):0.000}.");
        Assert.Equal(string.Create(plain, $"{x:0.00} ± {x:0.##} mm, as given {x} mm"), (Sentence)$"{BareMm(x):0.00} ± {Mm(x):0.##}, as given {Mm(x)}");
        Assert.Equal(double.IsNaN(x) || double.IsInfinity(x) ? $"{x.ToString(plain)} kg" : string.Create(plain, $"{x:+0.00;-0.00;0.00} kg"), ((Sentence)$"{Kg(x):+0.00}").ToString().Replace("+I", "I", StringComparison.Ordinal));
    }

    [Fact]
    public void What_rounds_to_zero_has_no_sign()
    {
        Assert.Equal("0.0 kg, 0.0 kg, 0 kg", (Sentence)$"{Kg(-0.04):0.0}, {Kg(0.04):+0.0}, {Kg(-0.04):+0.#}");
        Assert.Equal("0.0 lb", InPounds($"{Kg(-0.02):+0.0}"));
        Assert.Equal("+0.1 lb", InPounds($"{Kg(0.04):+0.0}"));
    }

    [Theory]
    [InlineData(0.45359237, "1.000 lb")]
    [InlineData(45.359237, "100.000 lb")]
    [InlineData(-0.45359237, "-1.000 lb")]
    [InlineData(100, "220.462 lb")]
    public void Pounds_are_exact(double kilograms, string text) => Assert.Equal(text, InPounds($"{Kg(kilograms):0.000}"));

    [Fact]
    public void Pounds_keep_the_decimals_of_kilograms()
    {
        Assert.Equal("The total changed by +2.6 lb: look.", InPounds($"The total changed by {Kg(1.2):+0.0}: look."));
        Assert.Equal("2310 lb, 2310.4 lb, 44.092 lb", InPounds($"{Kg(1048):0}, {Kg(1048):0.#}, {Kg(20)}"));
    }

    [Theory]
    [InlineData(25.4, "1.000 in")]
    [InlineData(-254, "-10.000 in")]
    [InlineData(1, "0.039 in")]
    public void Inches_are_exact_and_have_two_decimals_more(double millimetres, string text) => Assert.Equal(text, InInches($"{Mm(millimetres):0.0}"));

    [Fact]
    public void Inches_have_four_decimals_at_most()
    {
        Assert.Equal("0.0787 in, 0.0394 in, 0.08 in, 0.1969 in", InInches($"{Mm(2):0.00}, {Mm(1):0.000}, {Mm(2):0}, {Mm(5)}"));
        Assert.Equal("+0.002 in", InInches($"{Mm(0.05):+0.0}"));
    }

    [Fact]
    public void A_number_alone_moves_with_the_unit_that_stands_elsewhere() =>
        Assert.Equal("drifts by +0.22 ± 0.04 lb", InPounds($"drifts by {BareKg(0.1):+0.00} ± {Kg(0.02):0.00}"));

    [Fact]
    public void Other_holes_are_words_and_braces_stay_braces()
    {
        Sentence sentence = $"{{{"{0}"}}} has {12.5:0.00} % at {Kg(1):0}";
        Assert.Equal("{{{{0}}}} has 12.50 % at {0}", sentence.Text);
        Assert.Equal("{{0}} has 12.50 % at 2 lb", InPounds(sentence));
    }

    [Fact]
    public void The_language_of_the_machine_does_not_matter()
    {
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        CultureInfo.CurrentCulture = comma;
        try
        {
            Assert.Equal("1.5 kg, 2.5 %", (Sentence)$"{Kg(1.5):0.0}, {2.5:0.0} %");
            Assert.Equal("3.3 lb", InPounds($"{Kg(1.5):0.0}"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void One_in_another_keeps_its_arguments()
    {
        Sentence inner = $"{Kg(1):0.0} of {Kg(2):0.0}";
        Sentence whole = $"At {Mm(3):0}: {inner}, {Kg(4):0}";
        Assert.Equal("At {0}: {1} of {2}, {3}", whole.Text);
        Assert.Equal("At 3 mm: 2.2 lb of 4.4 lb, 9 lb", InPounds(whole));
        Assert.Equal("2.2 lb of 4.4 lb; none; 2 lb", InPounds(Sentence.Join("; ", inner, "none", $"{Kg(1):0}")));
        Assert.True(Sentence.Join("; ").IsEmpty);
    }

    [Fact]
    public void Two_are_equal_when_they_say_the_same()
    {
        Assert.Equal<Sentence>($"{Kg(1.04):0.0}", $"{Kg(1.01):0.0}");
        Assert.NotEqual<Sentence>($"{Kg(1.04):0.0}", $"{Kg(1.06):0.0}");
        Assert.Equal<Sentence>($"{Kg(1):0.0}", "1.0 kg");
        Assert.NotEqual<Sentence>($"{Kg(1):0.0}", $"{Mm(1):0.0}");
        Assert.Equal<Sentence>(default, "");
        Assert.Equal(((Sentence)$"{Kg(1.04):0.0}").GetHashCode(), ((Sentence)$"{Kg(1.01):0.0}").GetHashCode());
    }

    [Fact]
    public void On_record_it_is_its_text()
    {
        Assert.Equal("\"\\u002B1.2 kg\"", JsonSerializer.Serialize<Sentence>($"{Kg(1.2):+0.0}"));
        Assert.Equal("+1.2 kg", JsonSerializer.Deserialize<Sentence>("\"+1.2 kg\"").In(Unit.Pound, Unit.Inch));
    }

    [Theory]
    [InlineData("{0}", 1, true)]
    [InlineData("{1} {0} {{", 2, true)]
    [InlineData("{0}", 0, false)]
    [InlineData("{0} {0}", 1, false)]
    [InlineData("nothing", 1, false)]
    [InlineData("{x}", 0, false)]
    [InlineData("{1}", 1, false)]
    [InlineData("{", 0, false)]
    [InlineData("{999}", 1, false)]
    public void One_from_elsewhere_must_be_sound(string text, int arguments, bool isSound) =>
        Assert.Equal(isSound, Sentence.Parse(text, [.. Enumerable.Repeat(new Argument(1, Unit.Kilogram, 1), arguments)]) is not null);

    [Theory]
    [InlineData("F1")]
    [InlineData("0.0;-0.0")]
    [InlineData("+0.0;-0.0;0.0")]
    [InlineData("0.0#")]
    public void Another_format_is_refused(string format) => Assert.Throws<FormatException>(() =>
    {
        var sentence = new Sentence(0, 1);
        sentence.AppendFormatted(Kg(1), format);
    });
}
