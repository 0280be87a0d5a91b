using Client.Tests.Terminal;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Doctor;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Setup;
using ScaleLink.Client.WorkSessions.Guided;
using Wire = ScaleLink.Api.V1;
using Units = ScaleLink.Measure.Units;

namespace Client.Tests.Runtime;

/// <summary>
/// Sentences and typed numbers in pounds and inches. Expected figures by hand from 1 lb = 0.453 592 37 kg and 1 in = 25.4 mm, both exact (NIST Special
/// Publication 811:2008, appendix B.8); 1 psi = 0.068 947 6 bar.
/// </summary>
public class UnitWritingTests
{
    private static readonly Glyphs Pounds = Glyphs.Rich with { Units = Units.PoundInch };

    [Fact]
    public void What_the_daemon_says_is_told_in_the_units_of_the_terminal_and_stays_in_kg_in_json()
    {
        var told = new Wire.Diagnostic
        {
            Code = "SL-304", Message = "+100.2 kg came, 3.0 mm off.", Remedy = "Take 50 kg off.",
            TypedMessage = new()
            {
                Pattern = "{0} came, {1} off.",
                Arguments = { new Wire.Argument { Value = 100.2, Kind = Wire.ArgumentKind.Mass, Decimals = 1, Signed = true }, new Wire.Argument { Value = 3, Kind = Wire.ArgumentKind.Length, Decimals = 1 } },
            },
            TypedRemedy = new() { Pattern = "Take {0} off.", Arguments = { new Wire.Argument { Value = 50, Kind = Wire.ArgumentKind.Mass, Decimals = 0 } } },
        };
        var read = DiagnosticReader.Read(told);
        Assert.Equal("+220.9 lb came, 0.118 in off. Take 110 lb off. (SL-304)", Pounds.Tell(read));
        Assert.Equal("+100.2 kg came, 3.0 mm off. Take 50 kg off. (SL-304)", Glyphs.Rich.Tell(read));
        Assert.Contains("100.2 kg came, 3.0 mm off", System.Text.Json.JsonSerializer.Serialize(read));
    }

    [Fact]
    public void What_is_hostile_in_a_sentence_is_cleaned_and_its_loads_are_kept()
    {
        var told = new Wire.Diagnostic { Code = "SL-304", Message = "x", TypedMessage = new() { Pattern = "\e[2J{0} came.", Arguments = { new Wire.Argument { Value = 1, Kind = Wire.ArgumentKind.Mass, Decimals = 1 } } } };
        Assert.Equal("[2J2.2 lb came. (SL-304)", Pounds.Tell(DiagnosticReader.Read(told)));
    }

    [Fact]
    public void A_sentence_that_is_cut_off_before_its_load_becomes_words()
    {
        var told = new Wire.Diagnostic { Code = "SL-304", Message = "x", TypedMessage = new() { Pattern = new string('a', 400) + "{0}", Arguments = { new Wire.Argument { Value = 1, Kind = Wire.ArgumentKind.Mass } } } };
        Assert.EndsWith("... (SL-304)", Pounds.Tell(DiagnosticReader.Read(told)));
    }

    [Fact]
    public void A_check_that_asks_for_bar_asks_for_psi_and_its_value_says_so()
    {
        const string asks = "bar, LF RF LR RR";
        Assert.Equal("psi, LF RF LR RR", AskedUnits.Of(asks, Units.PoundInch));
        Assert.Equal("27 27 26 26 psi", AskedUnits.With("27 27 26 26", asks, Units.PoundInch));
        Assert.Equal("1.9 bar all round", AskedUnits.With("1.9 bar all round", asks, Units.PoundInch));
        Assert.Equal("1.9 1.9 1.8 1.8", AskedUnits.With("1.9 1.9 1.8 1.8", asks, Units.Metric));
        Assert.Equal(("lb", "litres"), (AskedUnits.Of("kg", Units.PoundInch), AskedUnits.Of("litres", Units.PoundInch)));
        Assert.Equal("", AskedUnits.With("", asks, Units.PoundInch));
    }

    [Fact]
    public void Typed_heights_and_masses_are_taken_in_the_units_of_the_terminal()
    {
        var heights = CornerArguments.ReadFour([1, 2, 3, 4], Units.PoundInch.Length.Factor)!;
        Assert.Equal((25.4, 50.8, 76.2, 101.6), (heights.Lf, heights.Rf, heights.Lr, heights.Rr), Close);
        Assert.Equal(["45 lb A, 45 lb, within 0.5", "45 lb B, 45 lb, within 0.5"], MassText.Lines("2 x 45, within 0.5", "lb"));
        Assert.Equal(["20 kg A, 20 kg, M1"], MassText.Lines("20 kg, M1", "lb"));
    }

    [Fact]
    public void The_doctor_tells_noise_in_pounds()
    {
        var diagnosis = new Wire.PadDiagnosis { Corner = Wire.Corner.Lf, Samples = 3200, MeasuredRateHz = 320, StatedRateHz = 320, NoiseKg = 0.4536, FreezeWatch = Wire.FreezeWatch.ByNoise };
        Assert.Contains("1.000 lb from sample to sample", string.Join('\n', FindingsTable.Lines([.. PadChecks.Of(diagnosis, 0.1)], Pounds)));
    }

    [Fact]
    public async Task Files_and_json_stay_in_kg_and_mm()
    {
        var heron = Shared.RepositoryRoot.File("docs", "cars", "heron.json");
        async Task<string> Json(params string[] more)
        {
            var output = new StringWriter();
            Assert.Equal(0, await ScaleLink.Client.CommandLine.Run(["car", "show", heron, "--json", .. more], Shells.Redirected(output), TestContext.Current.CancellationToken));
            return output.ToString();
        }

        Assert.Equal(await Json("--total", "1000"), await Json());
        Assert.Equal(await Json(), await Json("--units", "lb-in"));
        Assert.Equal(await Json("--total", "453.59237"), await Json("--total", "1000", "--units", "lb-in"));
    }

    private static bool Close((double, double, double, double) one, (double, double, double, double) other) =>
        Math.Abs(one.Item1 - other.Item1) + Math.Abs(one.Item2 - other.Item2) + Math.Abs(one.Item3 - other.Item3) + Math.Abs(one.Item4 - other.Item4) < 1e-9;
}
