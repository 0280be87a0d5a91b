namespace ScaleLink.Daemon.Workflows.WorkSessions.Standings;

/// <summary>Standard deviation of cross weight between settles, percent, and its degrees of freedom.</summary>
internal readonly record struct Repeatability(double Percent, double DegreesOfFreedom);

/// <summary>Settles between which nothing was turned and no correction switched: they differ only by how the car came to rest.</summary>
internal static class SettleGroups
{
    /// <summary>
    /// Where a car has no history: 0.1 % from settle to settle, believed as if three settles stood behind it. Common practice,
    /// no published source.
    /// </summary>
    public static readonly Repeatability Unknown = new(0.1, 3);

    // A few settles that happen to agree must not promise what no car does.
    private const double LeastPercent = 0.02;

    /// <summary>Readings that count, one group for each set of turns and corrections.</summary>
    public static IReadOnlyList<IReadOnlyList<SessionWeighing>> Of(IEnumerable<SessionWeighing> weighings)
    {
        ArgumentNullException.ThrowIfNull(weighings);
        List<List<SessionWeighing>> groups = [];
        foreach (var weighing in weighings.Where(c => c.Counts))
        {
            if (groups.Count == 0 || weighing.Adjustment is not null || !SwitchedPatch.IsSame(groups[^1][^1].Step.Reading, weighing.Step.Reading))
                groups.Add([]);
            groups[^1].Add(weighing);
        }

        return groups;
    }

    /// <summary>The repeatability of these groups, pooled with what was known before.</summary>
    public static Repeatability Pool(IReadOnlyList<IReadOnlyList<SessionWeighing>> groups, Repeatability before)
    {
        ArgumentNullException.ThrowIfNull(groups);
        var (squares, freedom) = (before.DegreesOfFreedom * before.Percent * before.Percent, before.DegreesOfFreedom);
        foreach (var group in groups)
        {
            var mean = group.Average(c => c.CrossWeightPercent);
            squares += group.Sum(c => (c.CrossWeightPercent - mean) * (c.CrossWeightPercent - mean));
            freedom += group.Count - 1;
        }

        return new(Math.Max(LeastPercent, Math.Sqrt(squares / freedom)), freedom);
    }
}
