namespace ScaleLink.Protocol.Readings;

/// <summary>Judges the rules of one source together: each meaning once, cells without a gap, units that fit.</summary>
static class FieldSet
{
    /// <summary>What is wrong with the rules; empty when nothing is.</summary>
    public static IEnumerable<string> Problems(IReadOnlyCollection<FieldRule> rules)
    {
        ArgumentNullException.ThrowIfNull(rules);
        foreach (var twice in rules.GroupBy(rule => (rule.Meaning, rule.Cell)).Where(group => group.Count() > 1))
            yield return twice.Key.Meaning == FieldMeaning.Load
                ? $"the load of cell {twice.Key.Cell + 1} is named twice"
                : $"{Name(twice.Key.Meaning)} is named twice";
        foreach (var rule in rules.Where(rule => !FieldUnits.Fits(rule.Meaning, rule.Unit)))
            yield return $"{Name(rule.Meaning)} cannot be in the unit {rule.Unit.ToString().ToLowerInvariant()}";
        var loads = rules.Where(rule => rule.Meaning == FieldMeaning.Load).ToList();
        if (loads.Count > 0 && loads.Max(load => load.Cell) != loads.Select(load => load.Cell).Distinct().Count() - 1)
            yield return "cells have to be numbered from 1 without a gap";
        if (loads.Select(load => FieldUnits.IsMass(load.Unit)).Distinct().Count() > 1)
            yield return "some loads are counts and some are masses";
    }

    static string Name(FieldMeaning meaning) => meaning.ToString().ToLowerInvariant();
}
