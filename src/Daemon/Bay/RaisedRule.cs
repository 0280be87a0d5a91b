using ScaleLink.Measure;

namespace ScaleLink.Daemon.Bay;

/// <summary>Which wheels are off their pads. A wheel comes back at half as much again as it leaves at, so that the state does not flicker.</summary>
internal sealed class RaisedRule(double belowKg)
{
    private const double ReturnFactor = 1.5;
    private readonly Dictionary<Corner, bool> _raised = [];

    /// <summary>Takes the loads of one block; gives the corners that are raised now.</summary>
    public IReadOnlyList<Corner> Add(Corners loads)
    {
        var raised = new List<Corner>();
        foreach (var corner in Corners.All)
        {
            var isRaised = loads[corner] < belowKg * (_raised.GetValueOrDefault(corner, true) ? ReturnFactor : 1);
            _raised[corner] = isRaised;
            if (isRaised)
                raised.Add(corner);
        }

        return raised;
    }
}
