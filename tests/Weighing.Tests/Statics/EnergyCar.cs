using MathNet.Numerics.LinearAlgebra;
using ScaleLink.Measure;

namespace Weighing.Tests.Statics;

/// <summary>
/// A car found at rest where its potential energy is least: seven freedoms (heave, pitch, roll, four wheels), exact angles,
/// springs at their own motion ratios, unsprung masses, bars. Shares no line with the product: no compliance, no warp pattern.
/// </summary>
sealed record EnergyCar
{
    const double G = 9.80665;

    public required double Wheelbase { get; init; }
    public required double FrontTrack { get; init; }
    public required double RearTrack { get; init; }
    public required Corners SpringRate { get; init; }
    public required Corners MotionRatio { get; init; }
    public required Corners TyreRate { get; init; }
    public required Corners PerchPitch { get; init; }
    public required Corners FreeLength { get; init; }
    public required Corners UnsprungKg { get; init; }
    public double FrontBar { get; init; }
    public double RearBar { get; init; }

    /// <summary>Masses on the body: kg, x, y, height above the roll axis.</summary>
    public required IReadOnlyList<(double Kg, double X, double Y, double Lever)> Sprung { get; init; }

    public double RollAxisHeight { get; init; }
    public double WheelHeight { get; init; } = 300;

    public double TotalKg => UnsprungKg.Sum + Sprung.Sum(m => m.Kg);

    public double CgHeight => (UnsprungKg.Sum * WheelHeight + Sprung.Sum(m => m.Kg * (m.Lever + RollAxisHeight))) / TotalKg;

    /// <summary>Mass times lever of everything that swings with the body, kg mm.</summary>
    public double Swing => Sprung.Sum(m => m.Kg * m.Lever);

    public Corners X => new(0, 0, -Wheelbase, -Wheelbase);

    public Corners Y => new(FrontTrack / 2, -FrontTrack / 2, RearTrack / 2, -RearTrack / 2);

    /// <summary>Loads, kg, and heights of the body above each pad, mm (from an arbitrary start).</summary>
    public (Corners Loads, Corners Heights) Rest(Corners padHeights = default, Corners turns = default)
    {
        var at = Vector<double>.Build.Dense(7);
        for (var round = 0; round < 50; round++)
        {
            var slope = Slope(at, padHeights, turns);
            var step = Curvature(at, padHeights, turns).Solve(slope);
            at -= step;
            if (step.L2Norm() < 1e-10)
                break;
        }
        return (Corners.From(c => TyreRate[c] * TyreSqueeze(at, c, padHeights) / G), Corners.From(c => Body(at, c) - padHeights[c]));
    }

    double Body(Vector<double> at, Corner c) => at[0] + X[c] * Math.Sin(at[1]) + Y[c] * Math.Cos(at[1]) * Math.Sin(at[2]);

    static double TyreSqueeze(Vector<double> at, Corner c, Corners pads) => pads[c] - at[3 + (int)c];

    double SpringSqueeze(Vector<double> at, Corner c, Corners turns) =>
        FreeLength[c] + turns[c] * PerchPitch[c] - MotionRatio[c] * (Body(at, c) - at[3 + (int)c]);

    // First derivatives of: springs, tyres, bars, weight, and the pull along sloping pads at the height it acts.
    Vector<double> Slope(Vector<double> at, Corners pads, Corners turns)
    {
        var slope = Vector<double>.Build.Dense(7);
        var (sinPitch, cosPitch, sinRoll, cosRoll) = (Math.Sin(at[1]), Math.Cos(at[1]), Math.Sin(at[2]), Math.Cos(at[2]));
        foreach (var c in Corners.All)
        {
            var other = (Corner)((int)c ^ 1);
            var bar = (int)c < 2 ? FrontBar : RearBar;
            var travel = Body(at, c) - at[3 + (int)c];
            var otherTravel = Body(at, other) - at[3 + (int)other];
            var push = SpringRate[c] * MotionRatio[c] * SpringSqueeze(at, c, turns) - bar * (travel - otherTravel);
            slope[0] -= push;
            slope[1] -= push * (X[c] * cosPitch - Y[c] * sinPitch * sinRoll);
            slope[2] -= push * Y[c] * cosPitch * cosRoll;
            slope[3 + (int)c] += push - TyreRate[c] * TyreSqueeze(at, c, pads) + UnsprungKg[c] * G;
        }
        foreach (var (kg, x, y, lever) in Sprung)
        {
            slope[0] += kg * G;
            slope[1] += kg * G * (x * cosPitch - y * sinPitch * sinRoll - lever * sinPitch * cosRoll);
            slope[2] += kg * G * (y * cosPitch * cosRoll - lever * cosPitch * sinRoll);
        }
        var held = G * (TotalKg * CgHeight - Swing);
        slope[1] -= held * ((pads.LF + pads.RF - pads.LR - pads.RR) / 2 / Wheelbase) * cosPitch;
        slope[2] -= held * RollOf(pads) * cosRoll;
        return slope;
    }

    // Least squares slope across: each axle's left-right step, weighed by its track.
    double RollOf(Corners pads) => ((pads.LF - pads.RF) * FrontTrack + (pads.LR - pads.RR) * RearTrack) / (FrontTrack * FrontTrack + RearTrack * RearTrack);

    Matrix<double> Curvature(Vector<double> at, Corners pads, Corners turns)
    {
        var curvature = Matrix<double>.Build.Dense(7, 7);
        for (var i = 0; i < 7; i++)
        {
            var h = i is 1 or 2 ? 1e-6 : 1e-3;
            var up = at.Clone();
            var down = at.Clone();
            up[i] += h;
            down[i] -= h;
            curvature.SetColumn(i, (Slope(up, pads, turns) - Slope(down, pads, turns)) / (2 * h));
        }
        return curvature;
    }
}
