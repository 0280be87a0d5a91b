using ScaleLink.Weighing.Calibration.Masses;

namespace ScaleLink.Weighing.Calibration.Flow;

/// <summary>Chooses the loads of a calibration procedure from the masses at hand.</summary>
static class LoadChoice
{
    /// <summary>Loads of a repetition: R 60-2:2021, 2.10.1, asks for at least five; more cost lifting and show little.</summary>
    public const int MostLoads = 5;

    /// <summary>
    /// Stacks that grow by one mass after another in the order given, so that nothing has to come off on the way up; of
    /// them at most some, evenly spread, the highest that the pad can carry among them.
    /// </summary>
    /// <param name="masses">At hand.</param>
    /// <param name="capacityKg">Of the pad.</param>
    /// <param name="most">Loads at most.</param>
    public static IReadOnlyList<LoadStack> Of(MassSet masses, double capacityKg, int most = MostLoads)
    {
        ArgumentNullException.ThrowIfNull(masses);
        List<LoadStack> stacks = [];
        List<string> labels = [];
        foreach (var mass in masses.Masses)
        {
            var stack = LoadStack.Of([.. labels, mass.Label]);
            // One that is too heavy is left out; a lighter one after it may still find room.
            if (masses.Kg(stack) > capacityKg)
                continue;
            labels.Add(mass.Label);
            stacks.Add(stack);
        }
        return stacks.Count <= most ? stacks : Spread(masses, stacks, most);
    }

    static List<LoadStack> Spread(MassSet masses, List<LoadStack> stacks, int most)
    {
        var highest = masses.Kg(stacks[^1]);
        return
        [
            .. Enumerable.Range(1, most).Select(i => highest * i / most)
                .Select(wanted => stacks.MinBy(stack => Math.Abs(masses.Kg(stack) - wanted))!)
                .Distinct(),
        ];
    }
}
