using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace ScaleLink.Weighing.Balance;

/// <summary>
/// Height of the centre of gravity above the ground, from axle lifts.
/// <para>
/// Derived: turn the car by t about the wheel centres of the axle that stays down, at height R. The centre of gravity, a behind
/// or before them and h - R above, comes nearer by (h - R) sin t. Moments about those wheel centres, with F the load of the
/// axle that stays down, W the total, L the wheelbase and S how much higher the other wheel centres are, give
/// h = R + [L (F - F level) + (W - F) S tan t] / (W tan t). With equal wheels this is
/// h = R + L (F - F level) / (W tan t), as in Jazar, Vehicle Dynamics, eq. (2.32).
/// </para>
/// <para>
/// The suspension must be blocked at its ride height and tyres be hard, or springs and tyres give way as load shifts and the
/// height comes out wrong. A few percent can be expected.
/// </para>
/// </summary>
/// <param name="HeightMm">mm above the ground.</param>
/// <param name="EachMm">The height that each lift alone gives, mm, in the order given.</param>
sealed record CgHeight(Value HeightMm, IReadOnlyList<double> EachMm)
{
    /// <summary>Below this angle a gram on the pads is a millimetre of height.</summary>
    public const double SmallestAngleDeg = 3;

    // One good series in a thousand is turned away.
    const double FalseAlarm = 0.001;

    /// <summary>The weighted mean over all lifts, which share level loads, wheelbase and radii and so their errors.</summary>
    /// <exception cref="DiagnosticException">A lift is not usable, or they contradict each other.</exception>
    public static CgHeight From(AxleLiftSetup setup, IReadOnlyList<AxleLift> lifts)
    {
        Refuse(setup, lifts);
        var heights = Vector<double>.Build.DenseOfEnumerable(lifts.Select(l => One(setup, l)));
        var spread = Spread(setup, lifts);
        var ones = Vector<double>.Build.Dense(lifts.Count, 1);
        var weights = spread.Solve(ones);
        var variance = 1 / weights.Sum();
        var mean = variance * weights.DotProduct(heights);
        var rest = heights - mean;
        if (lifts.Count > 1 && rest.DotProduct(spread.Solve(rest)) > ChiSquared.InvCDF(lifts.Count - 1, 1 - FalseAlarm))
        {
            var worst = rest.AbsoluteMaximumIndex();
            throw new DiagnosticException(new Diagnostic(CarCodes.LiftsDisagree,
                $"Lift {worst + 1} gives {Mm(heights[worst]):0}, all together {Mm(mean):0}: more apart than their uncertainty allows.",
                "Check that the suspension is blocked, tyres are hard, no brake is on, the wheels stand free of side force, and the tank is full or empty; then lift again."));
        }
        return new(new(mean, Math.Sqrt(variance)), [.. heights]);
    }

    static double One(AxleLiftSetup setup, AxleLift lift)
    {
        var down = AxleLift.Other(lift.Lifted);
        var tangent = Math.Tan(lift.AngleDeg.Estimate * Math.PI / 180);
        var (radius, step) = (setup.RadiusOf(down).Estimate, setup.RadiusOf(lift.Lifted).Estimate - setup.RadiusOf(down).Estimate);
        var moved = lift.OtherAxleLoadKg.Estimate - setup.LoadOf(down).Estimate;
        return radius + (setup.WheelbaseMm.Estimate * moved + (setup.TotalKg - lift.OtherAxleLoadKg.Estimate) * step * tangent) / (setup.TotalKg * tangent);
    }

    // Each input moved by its uncertainty moves some or all of the lifts together (JCGM 100:2008, 5.1.3 note 2 and 5.2).
    static Matrix<double> Spread(AxleLiftSetup setup, IReadOnlyList<AxleLift> lifts)
    {
        var spread = Matrix<double>.Build.Dense(lifts.Count, lifts.Count);
        Add(u => (setup with { WheelbaseMm = setup.WheelbaseMm.Moved(u * setup.WheelbaseMm.StandardUncertainty) }, lifts));
        Add(u => (setup with { FrontRadiusMm = setup.FrontRadiusMm.Moved(u * setup.FrontRadiusMm.StandardUncertainty) }, lifts));
        Add(u => (setup with { RearRadiusMm = setup.RearRadiusMm.Moved(u * setup.RearRadiusMm.StandardUncertainty) }, lifts));
        Add(u => (setup with { FrontLoadKg = Moved(setup.FrontLoadKg, u) }, lifts));
        Add(u => (setup with { RearLoadKg = Moved(setup.RearLoadKg, u) }, lifts));
        for (var i = 0; i < lifts.Count; i++)
        {
            var index = i;
            Add(u => (setup, [.. lifts.Select((l, j) => j == index ? l with { OtherAxleLoadKg = Moved(l.OtherAxleLoadKg, u) } : l)]));
            Add(u => (setup, [.. lifts.Select((l, j) => j == index ? l with { AngleDeg = Moved(l.AngleDeg, u) } : l)]));
        }
        return spread;

        void Add(Func<double, (AxleLiftSetup, IReadOnlyList<AxleLift>)> moved)
        {
            var (up, down) = (moved(1), moved(-1));
            var half = Vector<double>.Build.Dense(lifts.Count, i => (One(up.Item1, up.Item2[i]) - One(down.Item1, down.Item2[i])) / 2);
            spread += half.OuterProduct(half);
        }
    }

    static Value Moved(Value quantity, double times) => quantity with { Estimate = quantity.Estimate + times * quantity.Uncertainty };

    static void Refuse(AxleLiftSetup setup, IReadOnlyList<AxleLift> lifts)
    {
        List<Diagnostic> found = [];
        if (lifts.Count == 0)
            found.Add(new(CarCodes.LiftUnusable, "No lift was made.", "Lift one axle in three steps or more, then the other."));
        if (!(setup.WheelbaseMm.Estimate > 0 && setup.FrontRadiusMm.Estimate > 0 && setup.RearRadiusMm.Estimate > 0 && setup.FrontLoadKg.Estimate > 0 && setup.RearLoadKg.Estimate > 0))
            found.Add(new(CarCodes.LiftUnusable, "Wheelbase, radii and level loads must all be above zero.", "Weigh the car level first and measure hub heights."));
        for (var i = 0; i < lifts.Count; i++)
        {
            var lift = lifts[i];
            if (!(lift.AngleDeg.Estimate is >= SmallestAngleDeg and <= 40))
                found.Add(new(CarCodes.LiftUnusable, $"Lift {i + 1} tilts the car by {lift.AngleDeg.Estimate:F2} degrees.", $"Lift by {SmallestAngleDeg} degrees or more, as far as the car safely allows."));
            if (!(lift.AngleDeg.StandardUncertainty > 0 || lift.OtherAxleLoadKg.StandardUncertainty > 0))
                found.Add(new(CarCodes.LiftUnusable, $"Lift {i + 1} claims no uncertainty at all.", "State what angle and load are good to."));
            if (!(lift.OtherAxleLoadKg.Estimate > 0 && lift.OtherAxleLoadKg.Estimate < setup.TotalKg))
                found.Add(new(CarCodes.LiftUnusable, $"Lift {i + 1} leaves {Kg(lift.OtherAxleLoadKg.Estimate):0.0} of {Kg(setup.TotalKg):0.0} on the axle that stays down.", "Check which axle was lifted and which was read."));
        }
        if (found.Count > 0)
            throw new DiagnosticException(found);
    }
}
