using System.Runtime.CompilerServices;
using ScaleLink.Weighing.Calibration.Flow;
using ScaleLink.Weighing.Calibration.Procedure;

namespace ScaleLink.Daemon.Workflows.Calibration;

/// <summary>What the arithmetic says of a calibration procedure, worked out once for each step: a flow never changes.</summary>
internal sealed class ProcedureDigest
{
    private static readonly ConditionalWeakTable<ProcedureFlow, ProcedureDigest> Known = [];

    private readonly Lazy<PlanForecast?> _forecast;
    private readonly Lazy<IReadOnlyList<ProgressPoint>> _points;
    private readonly Lazy<ProcedureReport?> _report;

    private ProcedureDigest(ProcedureFlow flow)
    {
        _forecast = new(() => Foreseen(flow.Plan));
        _points = new(() => ProcedureProgress.Of(flow));
        // A calibration that was turned down is still worth reading.
        var finished = flow.Stage == ProcedureStage.Abandoned ? flow with { Ending = null } : flow;
        _report = new(() => finished.Stage is ProcedureStage.Review or ProcedureStage.Accepted ? finished.Report() : null);
    }

    /// <summary>What its plan costs and brings; absent for a plan of before that would not begin today.</summary>
    public PlanForecast? Forecast => _forecast.Value;

    /// <summary>Points so far.</summary>
    public IReadOnlyList<ProgressPoint> Points => _points.Value;

    /// <summary>The outcome; absent while points are missing.</summary>
    public ProcedureReport? Report => _report.Value;

    private static PlanForecast? Foreseen(ProcedurePlan plan)
    {
        try
        {
            return PlanForecast.Of(plan);
        }
        catch (RefusedException)
        {
            return null;
        }
    }

    /// <summary>Of a flow.</summary>
    public static ProcedureDigest Of(ProcedureFlow flow) => Known.GetValue(flow, f => new ProcedureDigest(f));
}
