using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Proving;

/// <summary>
/// All four pads proved at once with everything a proof can test but creep, and then loaded with masses that no proof used: whether the
/// stated uncertainty covers the truth, and what trimming does for a load that stands at the edge. The truth is what the simulator was
/// told to put down. With SCALELINK_LONG=1: some three minutes.
/// </summary>
public class FourPadsTests(ITestOutputHelper output)
{
    private const int SpotMm = 140;
    private static readonly double[] Masses = [30, 70, 110, 160, 210, 240, 290, 330, 370, 395];
    private static readonly int[] LoadsOfFifty = [1, 2, 4, 6, 8];
    private static readonly (int X, int Y)[] Spots = [(SpotMm, SpotMm), (SpotMm, -SpotMm), (-SpotMm, SpotMm), (-SpotMm, -SpotMm)];

    [Fact]
    public void Four_proofs_cover_the_truth_and_trims_take_the_place_out_of_the_load()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1", "Takes minutes: SCALELINK_LONG=1.");
        using var bay = new BayRig("noise,quantisation,dead-load,offset,span,unequal-cells,hysteresis,non-linearity,creep,clock-offset,clock-drift", seed: 11);
        bay.Zero();
        var before = Simulator.Corners.ToDictionary(c => c, c => PlacesDiffer(bay, c));
        Prove(bay);
        bay.Zero();

        var covered = 0;
        foreach (var corner in Simulator.Corners)
        {
            var after = PlacesDiffer(bay, corner);
            output.WriteLine($"{corner}: 100 kg in four places differs by {before[corner]:0.000} kg before and {after:0.000} kg after trimming");
            Assert.True(after < 0.12, $"{corner}: {after}");
            foreach (var kg in Masses)
            {
                var load = Read(bay, corner, kg, (0, 0));
                covered += Math.Abs(load.Value - kg) <= 2 * load.StandardUncertainty ? 1 : 0;
                output.WriteLine($"{corner} {kg,4:0} kg: {load.Value - kg,7:+0.000;-0.000} kg, u {load.StandardUncertainty:0.000}");
            }
        }

        output.WriteLine($"covered by two standard uncertainties: {covered} of {4 * Masses.Length}");
        Assert.InRange(covered, 4 * Masses.Length * 9 / 10, 4 * Masses.Length);
    }

    private static void Prove(BayRig bay)
    {
        string[] plan = ["--masses", "MASSES", .. LoadsOfFifty.SelectMany(n => (string[])["--load", ProvingCrew.Load(n)]), "--runs", "3", "--preloads", "1", "--corner-load", ProvingCrew.Load(2), "--adopt"];
        var crews = Simulator.Corners.Select(corner => new ProvingCrew(bay, corner, plan)).ToList();
        var codes = Task.WhenAll(crews.Select(crew => Task.Factory.StartNew(crew.Work, TaskCreationOptions.LongRunning))).GetAwaiter().GetResult();
        Assert.All(codes, code => Assert.Equal(0, code));
        Assert.All(bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads, p => Assert.True(p.Proved));
        crews.ForEach(c => c.Dispose());
    }

    private static double PlacesDiffer(BayRig bay, string corner)
    {
        var read = Spots.Select(spot => Read(bay, corner, 100, spot).Value).ToList();
        return read.Max() - read.Min();
    }

    // The pad's own mean of half a second, once neither noise of the change nor an old mass is in it.
    private static Quantity Read(BayRig bay, string corner, double kg, (int X, int Y) at)
    {
        bay.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":{{kg}},"x_mm":{{at.X}},"y_mm":{{at.Y}},"at_once":true}""");
        Thread.Sleep(1200);
        List<Quantity> loads = [];
        for (var i = 0; i < 4; i++)
        {
            Thread.Sleep(500);
            // A starved machine can leave a pad silent for a moment.
            Wait.Until(() => bay.Daemon.Pad(corner).LoadKg is not null, TimeSpan.FromSeconds(10), $"{corner} has a load");
            if (bay.Daemon.Pad(corner).LoadKg is { } load)
                loads.Add(load);
        }

        bay.Simulator.Do($$"""{"do":"mass","corner":"{{corner}}","kg":0,"at_once":true}""");
        return new Quantity { Value = loads.Average(l => l.Value), StandardUncertainty = loads.Average(l => l.StandardUncertainty) };
    }
}
