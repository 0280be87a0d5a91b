using ScaleLink.Measure;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;

namespace Weighing.Tests.Levelling;

public class MeasuredHeightsTests
{
    static readonly Corners Truth = new(1.5, -0.5, 0.25, -1.25);
    static readonly (Corner, Corner)[] Round = [(Corner.LF, Corner.RF), (Corner.RF, Corner.RR), (Corner.RR, Corner.LR), (Corner.LR, Corner.LF)];

    static HeightDifference Exact((Corner From, Corner To) pair, double u = 0.1) => new(pair.From, pair.To, Truth[pair.To] - Truth[pair.From], u);

    [Fact]
    public void Differences_round_the_patch_give_the_heights_and_close()
    {
        var heightMeasurement = MeasuredHeights.FromDifferences([.. Round.Select(p => Exact(p))]);

        Near(Truth, heightMeasurement.HeightsMm);
        Assert.Equal(0, heightMeasurement.ClosureMm, 1e-9);
        Assert.Equal(1, heightMeasurement.Spare);
        // Derived: a loop of four equal differences leaves u sqrt(5)/4 for a height above the mean of the four.
        Assert.Equal(0.1 * Math.Sqrt(5) / 4, Math.Sqrt(heightMeasurement.Covariance.LF.LF), 1e-9);
    }

    [Fact]
    public void A_closing_error_is_shared_out_evenly()
    {
        var differences = Round.Select(p => Exact(p)).ToList();
        differences[1] = differences[1] with { Mm = differences[1].Mm + 0.2 };

        var heightMeasurement = MeasuredHeights.FromDifferences(differences);

        Assert.Equal(0.05, heightMeasurement.ClosureMm, 1e-9);
        Assert.Equal(Truth.RF - Truth.LF - 0.05, heightMeasurement.HeightsMm.RF - heightMeasurement.HeightsMm.LF, 1e-9);
    }

    [Fact]
    public void A_gross_error_among_six_is_named()
    {
        List<HeightDifference> differences = [.. Round.Select(p => Exact(p)), Exact((Corner.LF, Corner.RR)), Exact((Corner.RF, Corner.LR))];
        differences[4] = differences[4] with { Mm = -differences[4].Mm };

        var finding = Assert.Throws<DiagnosticException>(() => MeasuredHeights.FromDifferences(differences)).Diagnostics[0];

        Assert.Equal(PatchCodes.HeightsDisagree, finding.Code);
        Assert.Contains("LF to RR", finding.Message);
    }

    [Fact]
    public void Differences_that_leave_a_pad_out_are_refused()
    {
        Assert.Equal(PatchCodes.HeightsIncomplete, Code([Exact((Corner.LF, Corner.RF)), Exact((Corner.LR, Corner.RR))]));
        Assert.Equal(PatchCodes.HeightsIncomplete, Code([Exact((Corner.LF, Corner.RF)), Exact((Corner.RF, Corner.LR)), Exact((Corner.LR, Corner.LF))]));
        Assert.Equal(PatchCodes.InputUnusable, Code([Exact((Corner.LF, Corner.LF))]));
        Assert.Equal(PatchCodes.InputUnusable, Code([Exact((Corner.LF, Corner.RF), u: 0)]));

        static string Code(IReadOnlyList<HeightDifference> d) => Assert.Throws<DiagnosticException>(() => MeasuredHeights.FromDifferences(d)).Diagnostics[0].Code;
    }

    [Fact]
    public void Stated_uncertainty_is_that_of_many_drawn_height_measurements()
    {
        var random = new Random(7501);
        List<double> warps = [];
        var contacts = Contacts.FromAxles(2450, 1500, 1480);
        double stated = 0;
        for (var i = 0; i < 4000; i++)
        {
            var heightMeasurement = MeasuredHeights.FromDifferences([.. Round.Select(p => Exact(p) is var d ? d with { Mm = d.Mm + MathNet.Numerics.Distributions.Normal.Sample(random, 0, 0.1) } : d)]);
            var warp = heightMeasurement.ShapeUnder(contacts).WarpMm;
            warps.Add(warp.Estimate);
            stated = warp.Uncertainty;
        }
        Assert.Equal(1, MathNet.Numerics.Statistics.Statistics.StandardDeviation(warps) / stated, 0.05);
    }

    [Fact]
    public void Heights_above_a_datum_give_the_same_patch()
    {
        var heightMeasurement = MeasuredHeights.FromHeights(Truth + Corners.Same(812), Corners.Same(0.2));

        Near(Truth, heightMeasurement.HeightsMm);
        Assert.Equal(0.04 * 0.75, heightMeasurement.Covariance.LF.LF, 1e-12);
        Assert.Equal(PatchCodes.InputUnusable, Assert.Throws<DiagnosticException>(() => MeasuredHeights.FromHeights(Truth, new(0.1, 0, 0.1, 0.1))).Diagnostics[0].Code);
    }

    [Fact]
    public void Slope_and_warp_come_apart()
    {
        var contacts = Contacts.FromAxles(2400, 1500, 1500);
        var tangent = Math.Tan(0.4 * Math.PI / 180);
        var heightMeasurement = MeasuredHeights.FromHeights(tangent * contacts.X - 0.5 * tangent * contacts.Y + 1.5 * contacts.WarpPattern, Corners.Same(0.1));

        var shape = heightMeasurement.ShapeUnder(contacts);

        Assert.Equal(0.4, shape.NoseUpDeg.Estimate, 1e-9);
        Assert.Equal(-0.2, shape.LeftUpDeg.Estimate, 1e-5);
        Assert.Equal(1.5, shape.WarpMm.Estimate, 1e-9);
        Assert.Equal(0.05, shape.WarpMm.Uncertainty, 1e-9);
    }

    [Fact]
    public void A_reversed_beam_needs_no_zero()
    {
        // Slope 0.3 degrees, zero of beam and instrument 0.7 degrees.
        var d = HeightDifference.FromReversedBeam(Corner.LF, Corner.RF, 1500, 0.3 + 0.7, -0.3 + 0.7, 0.02);

        Assert.Equal(1500 * Math.Sin(0.3 * Math.PI / 180), d.Mm, 1e-9);
        Assert.Equal(1500 * 0.02 / Math.Sqrt(2) * Math.PI / 180, d.StandardUncertaintyMm, 1e-4);
        Assert.Throws<DiagnosticException>(() => HeightDifference.FromReversedBeam(Corner.LF, Corner.RF, 0, 1, 1, 0.02));
    }

    static void Near(Corners expected, Corners actual)
    {
        foreach (var corner in Corners.All)
            Assert.Equal(expected[corner], actual[corner], 1e-9);
    }
}
