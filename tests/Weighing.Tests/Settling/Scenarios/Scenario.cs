namespace Weighing.Tests.Settling.Scenarios;

/// <summary>A kind of car and workshop, from which records are drawn by seed and number.</summary>
sealed record Scenario(string Name, Func<Draw, Motion> Move)
{
    public static readonly Scenario Linear = new("linear", LinearCar.Quiet);
    public static readonly Scenario Workshop = new("workshop", LinearCar.Workshop);
    public static readonly Scenario Shaken = new("shaken without end", LinearCar.Shaken);
    public static readonly Scenario Friction = new("friction", d => SpringCarRun.Run(d, SpringCarKind.WithFriction));
    public static readonly Scenario NoFriction = new("no friction", d => SpringCarRun.Run(d, SpringCarKind.WithoutFriction));
    public static readonly Scenario LightlyDamped = new("friction, damping 0.05", d => SpringCarRun.Run(d, SpringCarKind.LightlyDamped));
    public static readonly Scenario HardRocking = new("hard rocking", d => SpringCarRun.Run(d, SpringCarKind.HardRocking));
    public static readonly Scenario HandOnWheels = new("hand on the wheels", LeaningHand.OnTheWheels);
    public static readonly Scenario HandOnBody = new("hand on the body", LeaningHand.OnTheBody);

    /// <summary>Record <paramref name="number"/> of the series that <paramref name="seed"/> names.</summary>
    public RockingRecord Record(int seed, int number)
    {
        var draw = new Draw(seed * 100_003 + number);
        return Instrument.Read(Move(draw), draw);
    }

    /// <summary>Does the same to each of the first <paramref name="count"/> records of a series, on all cores, and keeps the order.</summary>
    public T[] Each<T>(int seed, int count, Func<RockingRecord, T> trial) =>
        [.. Enumerable.Range(0, count).AsParallel().AsOrdered().Select(i => trial(Record(seed, i)))];
}
