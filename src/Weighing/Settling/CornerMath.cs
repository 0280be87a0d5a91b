namespace ScaleLink.Weighing.Settling;

/// <summary>Corner-by-corner arithmetic without delegates, for code that runs on every block.</summary>
static class CornerMath
{
    public static Corners Times(this in Corners a, in Corners b) => new(a.LF * b.LF, a.RF * b.RF, a.LR * b.LR, a.RR * b.RR);

    public static double Largest(this in Corners a) => Math.Max(Math.Max(a.LF, a.RF), Math.Max(a.LR, a.RR));

    public static double LargestMagnitude(this in Corners a) =>
        Math.Max(Math.Max(Math.Abs(a.LF), Math.Abs(a.RF)), Math.Max(Math.Abs(a.LR), Math.Abs(a.RR)));

    public static Corners Least(in Corners a, in Corners b) =>
        new(Math.Min(a.LF, b.LF), Math.Min(a.RF, b.RF), Math.Min(a.LR, b.LR), Math.Min(a.RR, b.RR));

    public static Corners Most(in Corners a, in Corners b) =>
        new(Math.Max(a.LF, b.LF), Math.Max(a.RF, b.RF), Math.Max(a.LR, b.LR), Math.Max(a.RR, b.RR));

    public static bool IsFinite(this in Corners a) =>
        double.IsFinite(a.LF) && double.IsFinite(a.RF) && double.IsFinite(a.LR) && double.IsFinite(a.RR);
}
