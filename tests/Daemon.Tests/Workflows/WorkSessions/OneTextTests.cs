using System.Net;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Export;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Measure;
using MeasuredValue = ScaleLink.Api.V1.MeasuredValue;
using OnPage = ScaleLink.Board.Readings.Shown;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>One reading is one text on every face: the page, the terminal, the sheet, the head of the CSV, the daemon's own sentence. The project's own requirement.</summary>
public class OneTextTests
{
    private static readonly double[] Expanded = [0.003, 0.0095, 0.012, 0.0249, 0.03, 0.0951, 0.12, 0.25, 0.299, 0.3, 0.95, 1.04, 2.96, 3];

    public static TheoryData<double> DegreesOfFreedom() => [1, 5, 200];

    [Theory]
    [MemberData(nameof(DegreesOfFreedom))]
    public void Cross_weight_has_the_same_digits_on_five_faces(double degreesOfFreedom)
    {
        foreach (var expanded in Expanded)
        {
            var (one, start) = (new Value(0, 1, degreesOfFreedom).HalfWidth(), Bench.Start());
            using var bench = new Bench(start with { SettleMethod = start.SettleMethod with { RepeatabilityPercent = expanded / one, DegreesOfFreedom = degreesOfFreedom } });
            Weigh(bench, 0);
            // No finer than the least that is believed of how settles repeat.
            var standing = Standing.Of(bench.Session)!;
            Assert.True(standing.CrossWeightPercent.Expanded >= expanded * 0.999);

            var onPage = OnPage.Percent(MeasuredValue.Of(standing.CrossWeightPercent));
            Assert.Equal(onPage, Shown.Percent(MeasuredValue.Of(standing.CrossWeightPercent)).Full(Glyphs.Rich));
            Assert.Contains($" {onPage} (", standing.Words);
            Assert.Contains(Head(bench), l => l.Contains($" {onPage} ("));
            Assert.Contains($" {onPage} (", WebUtility.HtmlDecode(SessionSheet.Of(bench.View)));
        }
    }

    [Fact]
    public void The_total_has_the_same_digits_on_page_terminal_sheet_and_in_the_head_of_the_table()
    {
        foreach (var expanded in Expanded)
        {
            using var bench = new Bench();
            // Four pads that err independently.
            Weigh(bench, expanded / new Value(0, 1).HalfWidth() / 2);
            var total = bench.Session.Weighings[^1].Step.Reading.Whole.TotalKg;
            Assert.Equal(expanded, total.Expanded!.Value, expanded * 1e-3);

            var onPage = OnPage.Load(MeasuredValue.Of(total), Unit.Kilogram);
            Assert.Equal(onPage, Shown.Kg(MeasuredValue.Of(total), Glyphs.Rich).Full(Glyphs.Rich));
            Assert.Contains(Head(bench), l => l.EndsWith($" total {onPage}", StringComparison.Ordinal));
            Assert.Contains($">{onPage}<", WebUtility.HtmlDecode(SessionSheet.Of(bench.View)));
        }
    }

    private static void Weigh(Bench bench, double kg)
    {
        bench.Prepare();
        bench.Take(SessionRules.Weigh(bench.View, bench.Reading(Bench.FirstLoads) with { RepeatUKg = default, StandingUKg = Corners.Same(kg) }, null, ""));
    }

    private static IEnumerable<string> Head(Bench bench) => SessionCsv.Of(bench.Session).Split("\r\n").TakeWhile(l => l.StartsWith('#'));
}
