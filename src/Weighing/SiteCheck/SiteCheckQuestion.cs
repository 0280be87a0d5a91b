using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>All that is known of a place where somebody wants to weigh.</summary>
/// <param name="Pads">Four, one a corner, empty and zeroed.</param>
/// <param name="LoadsKg">Loads to be expected of the car, kg; quarters of its total where nobody knows more.</param>
sealed record SiteCheckQuestion(IReadOnlyList<WatchedPad> Pads, Corners LoadsKg)
{
    /// <summary>The car; null when nobody chose one.</summary>
    public CarStatics? Car { get; init; }

    /// <summary>Heights of the pads; null when nobody measured them.</summary>
    public MeasuredHeights? HeightMeasurement { get; init; }

    /// <summary>Corrections of the patch that are switched on.</summary>
    public IReadOnlyList<CorrectionKind> On { get; init; } = [];

    /// <summary>Size of a cross weight, and of a change of it, that the crew wants to be able to believe, percent.</summary>
    public double WantedPercent { get; init; } = CarTargets.UsualTolerancePercent;

    /// <summary>Where a finding begins.</summary>
    public SiteCheckLimits Limits { get; init; } = new();
}
