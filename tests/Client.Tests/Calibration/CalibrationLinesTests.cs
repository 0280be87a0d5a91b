using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Client.Calibration;
using ScaleLink.Client.Runtime;

namespace Client.Tests.Calibration;

/// <summary>Calibrations go by the number of the procedure that made them, in the terminal as on the page and the report.</summary>
public class CalibrationLinesTests
{
    [Fact]
    public void A_list_names_them_by_number_and_says_what_the_plus_minus_covers()
    {
        var made = new CalibrationSummary
        {
            Id = new string('a', 64), ProcedureId = "17", SerialNumber = "SLP-1001", Standing = CalibrationStanding.Calibrated, InEffect = true, Who = "A. Prover",
            Time = Timestamp.FromDateTimeOffset(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero)), CalibratedToKg = 400, ExpandedUncertaintyKg = 0.304,
        };
        var nominal = new CalibrationSummary { Id = new string('b', 64), SerialNumber = "SLP-1002", Standing = CalibrationStanding.Nominal, InEffect = true, ExpandedAtKg = 600, ExpandedUncertaintyKg = 11.8 };
        Assert.Equal(
            [
                "* No. 17   SLP-1001         calibrated 2026-11-25 to 400 kg +-0.304 (95 %), A. Prover",
                "* bay file SLP-1002         from the bay file, nominal only, +-11.8 kg (95 %) at 600 kg",
                "* in effect",
            ],
            CalibrationLines.List([made, nominal], Glyphs.Plain));
        // 400 / 0.45359237 = 881.849, 0.304 / 0.45359237 = 0.670.
        Assert.Equal(
            [
                "* No. 17   SLP-1001         calibrated 2026-11-25 to 881.8 lb +-0.670 (95 %), A. Prover",
                "* bay file SLP-1002         from the bay file, nominal only, +-26.0 lb (95 %) at 1323 lb",
                "* in effect",
            ],
            CalibrationLines.List([made, nominal], Glyphs.Plain with { Units = ScaleLink.Measure.Units.PoundInch }));
    }
}
