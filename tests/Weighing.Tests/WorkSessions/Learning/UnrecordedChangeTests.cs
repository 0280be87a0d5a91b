using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Learning;
using Weighing.Tests.Cars;

namespace Weighing.Tests.WorkSessions.Learning;

public class UnrecordedChangeTests
{
    static readonly CornerMatrix Noise = CornerMatrix.Diagonal(Corners.Same(0.01));
    static readonly CarStatics Statics = new(Heron.Car, Heron.TotalKg);

    static UnrecordedChange? After(Corners change) => UnrecordedChange.Between(
        StepLearner.Start(Statics, new LoadSummary(Heron.Loads, Noise)), new LoadSummary(Heron.Loads + change, Noise), OneMore);

    // 0.1 % from settle to settle, believed as three: one settle lies within 3.18 x 0.1 x sqrt 2 = 0.45 % of another (JCGM 100:2008, table G.2).
    static readonly Value OneMore = new(100 * (Heron.Loads.RF + Heron.Loads.LR) / Heron.TotalKg, 0.1 * Math.Sqrt(2), 3);

    [Fact]
    public void Settling_repeatability_is_no_change() => Assert.Null(After(new(1, -1, -1, 1)));

    [Theory]
    [InlineData(0.44, false)]
    [InlineData(0.46, true)]
    [InlineData(-0.46, true)]
    public void Cross_weight_is_judged_at_95_percent(double percent, bool isSeen)
    {
        var kg = percent / 100 * Heron.TotalKg / 2;
        var found = After(new(-kg, kg, kg, -kg));
        Assert.Equal(isSeen, found is not null);
        Assert.Equal(isSeen ? percent : 0, found?.CrossWeightChangePercent.Estimate ?? 0, 1e-9);
    }

    [Fact]
    public void A_turned_perch_shows_with_the_turns_that_would_do_it()
    {
        var found = After(Statics.FromTurns(new(0, 0, 1.5, 0)));

        Assert.Equal(UnrecordedKind.LooksLikePerch, found?.Kind);
        Assert.Equal(SessionCodes.UnrecordedChange, found?.Finding.Code);
        Assert.Equal(1.5, found?.TurnsOfOnePerch?.LR ?? 0, 0.01);
        Assert.True(found?.TurnsOfOnePerch is { LF: < 0, RF: > 0, RR: < 0 });
    }

    [Fact]
    public void A_person_shows_as_mass() => Assert.Equal(UnrecordedKind.MassChanged, After(Statics.FromMass(70, new(1300, 350)))?.Kind);

    [Fact]
    public void Moved_ballast_shows_as_moved() => Assert.Equal(UnrecordedKind.MassMovedOrPatch,
        After(Statics.FromMass(-15, new(500, 0)) + Statics.FromMass(15, new(2600, 0)))?.Kind);
}
