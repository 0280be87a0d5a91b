namespace ScaleLink.Weighing.Cars;

/// <summary>The spring seat that is turned to change a corner. Positive turns raise the corner.</summary>
sealed record Perch
{
    /// <summary>Travel of the perch along its thread, mm a turn.</summary>
    public required Stated PitchMmPerTurn { get; init; }

    /// <summary>False where the spring seat is fixed.</summary>
    public bool CanTurn { get; init; } = true;

    /// <summary>Thread left upwards, turns.</summary>
    public double UpTurnsLeft { get; init; }

    /// <summary>Thread left downwards, turns, as a positive number.</summary>
    public double DownTurnsLeft { get; init; }

    /// <summary>The same perch after some turns: what is gained on one side is lost on the other, down to none.</summary>
    public Perch After(double turns) => this with { UpTurnsLeft = Math.Max(0, UpTurnsLeft - turns), DownTurnsLeft = Math.Max(0, DownTurnsLeft + turns) };
}
