using ScaleLink.Api.V1;

namespace ScaleLink.Board.Cars;

/// <summary>What somebody tries out on the car in the bay, as the form has it.</summary>
internal sealed class WhatIf
{
    public const double MostTurns = 4, TurnStep = 0.125, MostBallastKg = 60;

    private readonly double[] _turns = new double[5];

    public double BallastKg { get; set; }
    public double BehindFrontAxleMm { get; set; } = 1200;
    public double LeftOfCentreMm { get; set; }
    public double HeightMm { get; set; } = 300;

    /// <summary>Bars connected or not; absent: as the car file says.</summary>
    public bool? Bars { get; set; }

    public double Turns(Corner corner) => _turns[(int)corner];

    public void SetTurns(Corner corner, double turns) => _turns[(int)corner] = Math.Clamp(turns, -MostTurns, MostTurns);

    public void Clear()
    {
        Array.Clear(_turns);
        (BallastKg, Bars) = (0, null);
    }

    /// <summary>As the daemon is asked, on the present settled loads.</summary>
    public AskWhatIfRequest Request()
    {
        var request = new AskWhatIfRequest { Turns = WireCorners.From(Turns) };
        if (BallastKg != 0)
        {
            request.Masses.Add(new MassChange
            {
                Name = "ballast", Kg = BallastKg,
                Place = new CarPlace { BehindFrontAxleMm = BehindFrontAxleMm, LeftOfCentreMm = LeftOfCentreMm, HeightMm = HeightMm },
            });
        }

        if (Bars is { } connected)
            request.BarsConnected = connected;
        return request;
    }
}
