namespace ScaleLink.Weighing.Cars.Files;

/// <summary>
/// What stands in where nobody knows: wide enough to hold nearly any circuit car with springs and tyres. From the range of
/// rates in everyday use; common practice, no published source. Plans may lean on it, corrections may not.
/// </summary>
static class Unknowns
{
    public static readonly Stated SpringRate = Stated.Guess(60, 25);
    public static readonly Stated MotionRatio = Stated.Guess(0.85, 0.2);
    public static readonly Stated TyreRate = Stated.Guess(220, 60);
    public static readonly Stated BarRate = Stated.Guess(10, 8);
    public static readonly Stated Pitch = Stated.Guess(2, 0.5);
    public static readonly Stated CgHeight = Stated.Guess(450, 100);
    public static readonly Stated RollAxis = Stated.Guess(50, 50);
}
