using Weighing.Tests.WorkSessions.Learning.Convergence;

namespace ScaleLink.Bench.Convergence;

/// <summary>Both crews on many drawn cars, for each smallest turn: steps, ride heights, limits, coverage.</summary>
static class ConvergenceBench
{
    /// <param name="args">Number of cars (1000) and seed (11).</param>
    public static int Run(string[] args)
    {
        var (cars, seed) = (Number(args, 0, 1000), Number(args, 1, 11));
        foreach (var smallestTurn in new[] { 0.125, 0.25, 0.5 })
        {
            Console.WriteLine($"smallest turn {smallestTurn}, {cars} cars, seed {seed}");
            Console.WriteLine(new Campaign(cars, seed, smallestTurn).Report());
        }
        return 0;
    }

    static int Number(string[] args, int index, int otherwise) => args.Length > index ? int.Parse(args[index]) : otherwise;
}
