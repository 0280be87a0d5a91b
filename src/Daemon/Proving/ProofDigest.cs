using System.Runtime.CompilerServices;
using ScaleLink.Weighing.Calibration;

namespace ScaleLink.Daemon.Proving;

/// <summary>What the arithmetic says of a proof, worked out once for each step: a flow never changes.</summary>
public sealed class ProofDigest
{
    private static readonly ConditionalWeakTable<ProofFlow, ProofDigest> Known = [];

    private readonly Lazy<IReadOnlyList<ProgressPoint>> _points;
    private readonly Lazy<ProofReport?> _report;

    private ProofDigest(ProofFlow flow)
    {
        _points = new(() => ProofProgress.Of(flow));
        // A calibration that was turned down is still worth reading.
        var finished = flow.Stage == ProofStage.Abandoned ? flow with { Ending = null } : flow;
        _report = new(() => finished.Stage is ProofStage.Review or ProofStage.Accepted ? finished.Report() : null);
    }

    /// <summary>Points so far.</summary>
    public IReadOnlyList<ProgressPoint> Points => _points.Value;

    /// <summary>The outcome; absent while points are missing.</summary>
    public ProofReport? Report => _report.Value;

    /// <summary>Of a flow.</summary>
    public static ProofDigest Of(ProofFlow flow) => Known.GetValue(flow, f => new ProofDigest(f));
}
