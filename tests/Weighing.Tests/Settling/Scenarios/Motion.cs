using ScaleLink.Measure;

namespace Weighing.Tests.Settling.Scenarios;

/// <summary>
/// What four ideal pads would read 80 times a second from 8 s before the last contact leaves the car to 20 s after, and what
/// they would read if the car stood still at that instant.
/// </summary>
sealed class Motion
{
    public const double SampleRate = 80;
    public const double Start = -8;
    public const double SessionStarts = -4;
    public const double End = 20;
    public const int Samples = (int)((End - Start) * SampleRate);

    public static readonly double[] Warp = [1, -1, -1, 1];

    public double[][] Loads { get; } = Four();

    public double[][] AtRest { get; } = Four();

    /// <summary>Instants at which friction let go, s.</summary>
    public List<double> Slips { get; } = [];

    /// <summary>Direction in which a rigid body's heave, pitch and roll do not show, from the true rates; null: not a spring car.</summary>
    public Corners? BlindDirection { get; set; }

    /// <summary>The warp vector of the contacts: it carries neither total nor moments. Null: not a spring car.</summary>
    public Corners? WarpVector { get; set; }

    /// <summary>True ride rates up to a common factor; null: not a spring car.</summary>
    public Corners? RideRates { get; set; }

    public static double Time(int sample) => Start + sample / SampleRate;

    static double[][] Four() => [new double[Samples], new double[Samples], new double[Samples], new double[Samples]];
}
