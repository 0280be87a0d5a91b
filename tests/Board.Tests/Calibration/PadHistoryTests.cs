using Google.Protobuf.WellKnownTypes;
using ScaleLink.Api.V1;
using ScaleLink.Board.Calibration;

namespace Board.Tests.Calibration;

public class PadHistoryTests
{
    [Fact]
    public void Zero_and_span_are_told_against_the_first_calibration_in_the_order_of_time()
    {
        // 0.5 g a count: 400 counts more are 0.2 kg; 0.0005005 instead of 0.0005 is 0.1 %.
        var history = PadHistory.Of([Made("17", 2, 20_400, 0.0005005, inEffect: true), Made("9", 1, 20_000, 0.0005), new CalibrationSummary { Id = "bay file", Standing = CalibrationStanding.Nominal }]);
        Assert.Equal(["9", "17"], history.Marks.Select(m => m.Number));
        Assert.Equal((0.2, 0.1), (Math.Round(history.Marks[1].ZeroKg, 9), Math.Round(history.Marks[1].SpanPercent, 9)));
        Assert.Equal([false, true], history.Marks.Select(m => m.InEffect));
    }

    [Fact]
    public void Trims_that_only_change_the_sum_move_nothing()
    {
        // Twice the trims: twice the counts, half the kilograms a count; the pad is the same.
        var history = PadHistory.Of([Made("9", 1, 20_000, 0.0005, trim: 1), Made("17", 2, 40_000, 0.00025, trim: 2)]);
        Assert.Equal((0, 0), (Math.Round(history.Marks[1].ZeroKg, 9), Math.Round(history.Marks[1].SpanPercent, 9)));
    }

    [Fact]
    public void A_calibration_that_came_into_effect_again_is_one_mark()
    {
        var history = PadHistory.Of([Made("9", 1, 20_000, 0.0005, inEffect: true), Made("17", 2, 20_000, 0.0005), Made("9", 1, 20_000, 0.0005)]);
        Assert.Equal(2, history.Marks.Count);
    }

    private static CalibrationSummary Made(string number, int day, double zero, double span, bool inEffect = false, double trim = 1) => new()
    {
        Id = $"identity of {number}", ProcedureId = number, Standing = CalibrationStanding.Calibrated, InEffect = inEffect, ZeroCounts = zero, SpanKgPerCount = span, CellTrim = { trim, trim },
        Time = Timestamp.FromDateTimeOffset(new DateTimeOffset(2026, 11, day, 9, 0, 0, TimeSpan.Zero)),
    };
}
