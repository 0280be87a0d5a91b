using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Workflows.WorkSessions;
using ScaleLink.Daemon.Workflows.WorkSessions.Standings;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.WorkSessions;

/// <summary>Corrections of the patch that are switched in the middle of a session. Expected figures are the sizes themselves: arithmetic, no source.</summary>
public sealed class SwitchedPatchTests : IDisposable
{
    // Much more than settling explains: 1.15 % of cross weight.
    private static readonly Corners Warp = new(-3, 3, 3, -3);

    private readonly Bench _bench = new();

    public SwitchedPatchTests()
    {
        _bench.Prepare();
        _bench.Weigh(Bench.FirstLoads);
    }

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_switch_asks_for_no_name_and_the_car_stands_where_the_corrected_loads_say()
    {
        var now = Corrected(Bench.FirstLoads);
        Assert.Null(UnnamedChange.Of(_bench.View, now));
        _bench.Take(SessionRules.Weigh(_bench.View, now, null, ""));
        Assert.False(_bench.Session.NeedsName);
        Assert.Empty(_bench.Session.Weighings[^1].OpenFindings);
        var standing = Standing.Of(_bench.Session)!;
        Assert.Equal(now.CrossWeightPercent, standing.CrossWeightPercent.Estimate, 9);
        Assert.Equal(1, standing.Settles);
        // Two settles that agree but for the switch leave no repeatability behind.
        Assert.Equal(0.1, standing.Repeatability.Percent, 9);
        Assert.Equal(now.CrossWeightPercent, _bench.Session.Known!.CrossWeightPercent.Estimate, 0.02);
    }

    [Fact]
    public void A_change_beside_the_switch_is_still_told()
    {
        var moved = Bench.LoadsAfter(new(0, 1, 0, 0));
        Assert.Equal("SL-576", UnnamedChange.Of(_bench.View, Corrected(moved))?.Code);
        _bench.Take(SessionRules.Weigh(_bench.View, Corrected(moved), null, ""));
        Assert.True(_bench.Session.NeedsName);
        _bench.Take(SessionRules.Name(_bench.View, new(0, 1, 0, 0), null));
        Assert.Empty(_bench.Session.Weighings[^1].OpenFindings);
    }

    [Fact]
    public void Turns_are_judged_and_learned_from_as_if_it_had_been_on_before()
    {
        var turned = new Corners(0, 0.5, 0, 0);
        _bench.Turn(turned);
        _bench.Take(SessionRules.Weigh(_bench.View, Corrected(Bench.LoadsAfter(turned)), null, ""));
        Assert.Empty(_bench.Session.Weighings[^1].OpenFindings);
        using var plain = new Bench();
        plain.Prepare();
        plain.Weigh(Bench.FirstLoads);
        plain.Turn(turned);
        plain.Weigh(Bench.LoadsAfter(turned));
        Assert.Equal(plain.Session.Known!.NextReading(turned).Estimate + 100 * (Warp.RF + Warp.LR) / Bench.FirstLoads.Sum, _bench.Session.Known!.NextReading(turned).Estimate, 1e-6);
    }

    [Fact]
    public void A_refused_one_changes_nothing()
    {
        var refused = _bench.Reading(Bench.FirstLoads) with { Patch = [new("warp", null)] };
        _bench.Take(SessionRules.Weigh(_bench.View, refused, null, ""));
        Assert.Equal(2, Standing.Of(_bench.Session)!.Settles);
    }

    [Fact]
    public void After_a_restart_the_same_rest_is_known_by_its_uncorrected_loads()
    {
        var again = _bench.Unseen(Bench.FirstLoads + Warp) with { Patch = [new("warp", Warp)] };
        Assert.Equal(SessionCodes.SameRest, Assert.Throws<StepRefusedException>(() => SessionRules.Weigh(_bench.View, again, null, "")).Diagnostic.Code);
    }

    private RecordedWeighing Corrected(Corners loads) => _bench.Reading(loads + Warp) with { Patch = [new("warp", Warp)] };
}
