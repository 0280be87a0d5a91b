using System.Text.Json.Serialization;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Steps;

/// <summary>Four settled loads on record.</summary>
internal sealed record RecordedWeighing
{
    // What a zero wanders while nobody looks; a car that was settled anew rarely comes so near at all four corners. Common practice, no published source.
    private const double WanderKg = 0.1;
    private const double Sure = 3;

    /// <summary>kg.</summary>
    public required Corners LoadsKg { get; init; }

    /// <summary>One standard uncertainty of what differs from reading to reading, kg.</summary>
    public required Corners RepeatUKg { get; init; }

    /// <summary>One standard uncertainty of what stays the same from reading to reading (calibration, patch), kg.</summary>
    public required Corners StandingUKg { get; init; }

    /// <summary>Of that, what errs alike on all pads, kg; none in weighings of before it was told apart.</summary>
    public Corners AlikeUKg { get; init; }

    /// <summary>Of that, what may err alike on all pads or on each by itself, kg; none in weighings of before it was told apart.</summary>
    public Corners PerhapsAlikeUKg { get; init; }

    /// <summary>Calibrations behind them, in the order LF, RF, LR, RR.</summary>
    public required IReadOnlyList<string> Calibrations { get; init; }

    /// <summary>Pads that were not calibrated with known masses.</summary>
    [JsonPropertyName("unproved")]
    public required IReadOnlyList<Corner> NominalOnly { get; init; }

    /// <summary>Corrections of the patch that were on.</summary>
    public IReadOnlyList<PatchInReading> Patch { get; init; } = [];

    /// <summary>The start of the daemon that read them.</summary>
    [JsonPropertyName("runId")]
    public required string StartId { get; init; }

    /// <summary>Number of the reading in that run.</summary>
    public required long Seq { get; init; }

    /// <summary>When the car had come to this rest, ns on the clock of that run.</summary>
    public required long RestSinceNs { get; init; }

    /// <summary>Whether the car was watched on its way to this rest; it was not after a restart or a gap in the readings.</summary>
    public bool RestWasSeen { get; init; } = true;

    /// <summary>Whether this is an earlier reading once more: the same rest by the clock of one run or, where nobody watched the car, the same loads.</summary>
    public bool IsSameRestAs(RecordedWeighing earlier)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        return (StartId == earlier.StartId && RestSinceNs <= earlier.RestSinceNs) || (!RestWasSeen && Corners.All.ToArray().All(c =>
            Math.Abs(Uncorrected[c] - earlier.Uncorrected[c]) <= WanderKg + Sure * Math.Sqrt(RepeatUKg[c] * RepeatUKg[c] + earlier.RepeatUKg[c] * earlier.RepeatUKg[c])));
    }

    /// <summary>What the corrections of the patch have added, kg.</summary>
    [JsonIgnore]
    public Corners PatchKg => Patch.Aggregate(default(Corners), (sum, p) => sum + (p.SizeKg ?? default));

    private Corners Uncorrected => LoadsKg - PatchKg;

    /// <summary>The load of one corner with everything that is uncertain of it.</summary>
    public Value LoadKg(Corner corner) => new(LoadsKg[corner], Math.Sqrt(RepeatUKg[corner] * RepeatUKg[corner] + StandingUKg[corner] * StandingUKg[corner]));

    /// <summary>(RF + LR) / total, percent.</summary>
    [JsonIgnore]
    public double CrossWeightPercent => ForSteps.CrossWeightPercent.Estimate;

    /// <summary>For comparing readings: what stays the same drops out of their difference.</summary>
    [JsonIgnore]
    public LoadSummary ForSteps => new(LoadsKg, Squares(RepeatUKg));

    /// <summary>
    /// With everything that is uncertain. What errs alike is its outer product (JCGM 100:2008, F.1.2.3); what may err either way counts each
    /// way where that is the worse.
    /// </summary>
    [JsonIgnore]
    public LoadSummary Whole => new(LoadsKg, Apart, otherwise: Apart - Squares(PerhapsAlikeUKg) + CornerMatrix.Outer(PerhapsAlikeUKg, PerhapsAlikeUKg));

    private CornerMatrix Apart => Squares(RepeatUKg) + Squares(StandingUKg) - Squares(AlikeUKg) + CornerMatrix.Outer(AlikeUKg, AlikeUKg);

    private static CornerMatrix Squares(Corners u) => CornerMatrix.Diagonal(u.Map(x => x * x));
}
