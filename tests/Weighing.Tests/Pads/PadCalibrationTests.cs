using System.Text.Json;
using CsCheck;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Pads;

namespace Weighing.Tests.Pads;

public class PadCalibrationTests
{
    static readonly Place Shop = Place.On("workshop", 52, 80);

    static PadCalibration Start => PadCalibration.Starting("P7", 0.0025, 0.02, 450, 4, Shop, DateTimeOffset.UnixEpoch);

    [Fact]
    public void A_nominal_sensitivity_gives_loads_with_the_stated_uncertainty_and_calls_them_nominal_only()
    {
        var load = Start.Load(counts: 141_000, zeroCounts: 41_000);
        Assert.Equal(250, load.Kg, 1e-9);
        Assert.False(Start.IsCalibrated);
        Assert.Equal(5, load.Budget.Terms.Single(t => t.Name == BudgetTerms.StatedSpan).StandardUncertainty, 1e-9);
    }

    [Theory]
    [InlineData(0, 0.02, 450, 4)]
    [InlineData(double.NaN, 0.02, 450, 4)]
    [InlineData(0.0025, 0, 450, 4)]
    [InlineData(0.0025, 1, 450, 4)]
    [InlineData(0.0025, 0.02, 0, 4)]
    [InlineData(0.0025, 0.02, 450, 9)]
    public void A_nominal_sensitivity_that_cannot_be_is_refused(double kgPerCount, double u, double capacity, int cells) =>
        Assert.Equal("SL-329", Assert.Throws<RefusedException>(
            () => PadCalibration.Starting("P7", kgPerCount, u, capacity, cells, Shop, DateTimeOffset.UnixEpoch)).Diagnostic.Code);

    [Fact]
    public void Counts_and_kilograms_are_each_others_inverse() => Gen.Select(Gen.Double[-50, 500], Gen.Double[-3e-10, 3e-10], Gen.Bool)
        .Sample((kg, curvature, reversed) =>
        {
            var pad = Start with { SpanKgPerCount = reversed ? -0.0025 : 0.0025, CurvatureKgPerCount2 = curvature };
            Assert.Equal(kg, pad.Kg(pad.CountsAboveZero(kg)), 1e-9);
        });

    [Fact]
    public void Trims_weigh_the_cells()
    {
        var pad = Start with { CellTrim = [1.01, 0.99, 1, 1] };
        Assert.Equal(1000 * 1.01 + 2000 * 0.99 + 3000 + 4000, pad.Counts([1000, 2000, 3000, 4000]), 1e-9);
        Assert.Equal("SL-332", Assert.Throws<RefusedException>(() => pad.Counts([1, 2, 3])).Diagnostic.Code);
    }

    [Fact]
    public void The_identity_follows_the_content_and_nothing_else()
    {
        var same = Start with { CellTrim = [1.0, 1.0, 1.0, 1.0] };
        Assert.Equal(Start.Identity, same.Identity);
        Assert.Equal(Start, same);
        Assert.Matches("^[0-9a-f]{64}$", Start.Identity);

        PadCalibration[] changed =
        [
            Start with { Pad = "P8" }, Start with { SpanKgPerCount = Math.BitIncrement(0.0025) }, Start with { ZeroCounts = 1 },
            Start with { CellTrim = [1, 1, 1, 1.001] }, Start with { Time = DateTimeOffset.UnixEpoch.AddTicks(1) },
            Start with { Place = Place.On("workshop", 52, 81) }, Start with { TemperatureC = 20 }, Start with { Who = "a\nplace=1:b" },
            Start with { Errors = new ErrorSources { CreepRelative = 1e-4 } }, Start with { RepeatabilityDegreesOfFreedom = 9 },
        ];
        Assert.Equal(changed.Length + 1, changed.Append(Start).Select(c => c.Identity).Distinct().Count());
    }

    [Fact]
    public void The_identity_survives_being_written_down()
    {
        var calibrated = Start with { Standing = CalibrationStanding.Calibrated, Repeatability = new(1e-13, -1e-19, 3e-25), SpanKgPerCount = 0.1 / 3 };
        var read = JsonSerializer.Deserialize<PadCalibration>(JsonSerializer.Serialize(calibrated, ProcedureFlowJson.Options), ProcedureFlowJson.Options)!;
        Assert.Equal(calibrated.Identity, read.Identity);
    }

    [Fact]
    public void The_hash_is_that_of_the_canonical_text()
    {
        // Pins the form of the text: a change of form makes every recorded identity unreadable. SHA-256 is FIPS 180-4.
        var text = CalibrationText.Of(Start);
        Assert.StartsWith("pad calibration, form 1\npad=2:P7\nstanding=8:Starting\ntime=28:1970-01-01T00:00:00.0000000Z\n", text, StringComparison.Ordinal);
        var hash = System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(text));
        Assert.Equal(Convert.ToHexString(hash), Start.Identity, ignoreCase: true);
        Assert.Equal(17, text.Count(c => c == '\n'));
    }
}
