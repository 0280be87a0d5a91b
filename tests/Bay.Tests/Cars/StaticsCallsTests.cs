using Bay.Tests.Asking;
using ScaleLink.Api.V1;

namespace Bay.Tests.Cars;

/// <summary>What statics is asked over gRPC, against closed forms, a handbook's figures and the simulator's own physics.</summary>
[Collection(AskingCollection.Name)]
public class StaticsCallsTests(AskingBay bay)
{
    // tests/reference/vehicle-dynamics.json, pad_height_and_cross_weight (derived there): 25 N/mm at each wheel, 4 mm in the warp pattern: 25 N.
    private const double KgOf25N = 25 / 9.80665;

    private static Asked Square => new() { CarFile = AskingBay.SquareCar, LoadsKg = Loads(268, 288, 257, 235) };

    [Fact]
    public void Raised_pads_and_turns_do_what_the_closed_form_says()
    {
        var pads = bay.Daemon.Cars.AskWhatIf(new AskWhatIfRequest { Asked = Square, PadsRaisedMm = new() { Lf = 1, Rf = -1, Lr = -1, Rr = 1 } });
        Changed(pads, KgOf25N, -KgOf25N, -KgOf25N, KgOf25N);
        // One turn is 2 mm at the wheel: half of that. The body rises by 2 mm less what the spring and tyre give, 12.5 N / 25 N/mm.
        var turn = bay.Daemon.Cars.AskWhatIf(new AskWhatIfRequest { Asked = Square, Turns = new() { Lf = 1 } });
        Changed(turn, KgOf25N / 2, -KgOf25N / 2, -KgOf25N / 2, KgOf25N / 2);
        Equal(turn.HeightChangesMm, 1.5, 0.5, 0.5, -0.5, 1e-6);
    }

    [Fact]
    public void Mass_goes_to_the_wheels_by_its_moments()
    {
        // 20 kg 1000 mm behind the front axle and 300 mm left: front 20 (1 - 1000/2500) = 12, left 20 (1/2 + 300/1500) = 14, and by equal
        // rates no warp, LF - RF = LR - RR: LF 8, RF 4, LR 6, RR 2 (moment balance, own working).
        var asked = new AskWhatIfRequest { Asked = Square };
        asked.Masses.Add(new MassChange { Name = "tool", Kg = 20, Place = new() { BehindFrontAxleMm = 1000, LeftOfCentreMm = 300, HeightMm = 400 } });
        Changed(bay.Daemon.Cars.AskWhatIf(asked), 8, 4, 6, 2);
    }

    [Fact]
    public void The_car_in_the_bay_does_within_the_uncertainty_what_was_said()
    {
        var said = bay.Daemon.Cars.AskWhatIf(new AskWhatIfRequest { Turns = new() { Lf = 0.5, Rf = -0.25 } });
        var truth = bay.Rig.Simulator.TrueLoads();
        Turn("LF", 0.5);
        Turn("RF", -0.25);
        var then = bay.Rig.Simulator.TrueLoads();
        Turn("LF", -0.5);
        Turn("RF", 0.25);
        var (now, next) = (Each(said.Now.LoadsKg), Each(said.Then.LoadsKg));
        for (var i = 0; i < 4; i++)
        {
            Assert.InRange(Math.Abs(then[i] - truth[i]), 1, 20);
            // Three standard uncertainties: the simulated springs are not the file's to the last digit.
            var limit = 3 * next[i].StandardUncertainty;
            Assert.InRange(next[i].Estimate - now[i].Estimate - (then[i] - truth[i]), -limit, limit);
        }
    }

    [Fact]
    public void A_question_with_an_unusable_number_is_refused_by_its_code()
    {
        Assert.Equal("SL-517", bay.WithoutCar);
        Assert.Equal("SL-518", bay.WithoutLoads);
        Assert.Equal("SL-552", Refused(a => a.Turns = new() { Rf = double.NaN }));
        Assert.Equal("SL-552", Refused(a => a.Turns = new() { Rf = 1e6 }));
        Assert.Equal("SL-529", Refused(a => a.PadsRaisedMm = new() { Lf = double.PositiveInfinity }));
        Assert.Equal("SL-543", Refused(a => a.Masses.Add(new MassChange { Name = "nowhere", Kg = 5 })));
        Assert.Equal("SL-511", Refused(a => a.Masses.Add(new MassChange { Name = "half the car", Kg = -1000, Place = new() })));
        Assert.Equal("SL-511", Refused(a => a.Asked.LoadsKg = Loads(268, 0, 257, 235)));
        Assert.Equal("SL-506", Refused(a => a.Asked.LoadsKg.Rr.StandardUncertainty = -1));
        Assert.Equal("SL-512", Refused(a => a.Asked.CarFile = "no car"));
    }

    [Fact]
    public void Balance_tells_what_each_aim_costs()
    {
        // Perches move d (1, -1, -1, 1). Cross weight: 545 - 2 d = 524; front: 268 + d = 288 - d; rear: 257 - d = 235 + d; left-side weights:
        // (268 + d) / 556 = (257 - d) / 492. Own working.
        var balance = bay.Daemon.Cars.GetBalance(new GetBalanceRequest { Asked = Square, CrossWeightPercent = 50, FrontWeightPercent = 55 });
        var byAim = new Dictionary<BalanceAim, double>
        {
            [BalanceAim.CrossWeight] = 10.5, [BalanceAim.EqualFrontLoads] = 10, [BalanceAim.EqualRearLoads] = 11, [BalanceAim.EqualLeftSideWeights] = 11036 / 1048.0,
        };
        Assert.Equal(byAim.Count, balance.Trades.Count);
        Assert.All(balance.Trades, t => Equal(t.LoadsKg, 268 + byAim[t.Aim], 288 - byAim[t.Aim], 257 - byAim[t.Aim], 235 + byAim[t.Aim], 1e-6));
        Assert.All(balance.Trades, t => Assert.Equal(100 * (545 - 2 * byAim[t.Aim]) / 1048, t.CrossWeightPercent, 6));
        // m kg 500 mm before the front axle put 1.2 m on it: (556 + 1.2 m) / (1048 + m) = 0.55.
        var way = Assert.Single(balance.Ballast);
        Assert.Equal(("nose", true), (way.To, way.Reaches));
        Assert.Equal(20.4 / 0.65, way.Kg, 6);
        Assert.Equal("SL-508", bay.Code(() => bay.Daemon.Cars.GetBalance(new GetBalanceRequest { Asked = Square, CrossWeightPercent = 500 })));
        Assert.Equal("SL-508", bay.Code(() => bay.Daemon.Cars.GetBalance(new GetBalanceRequest { Asked = Square, FrontWeightPercent = double.NaN })));
    }

    [Fact]
    public void The_centre_of_gravity_lies_where_the_handbook_has_it()
    {
        // Jazar, Vehicle Dynamics, Example 40: wheelbase 2.34 m, 2000 N on each front wheel, 1800 N on each rear one: a1 = 1.1084 m.
        var car = AskingBay.SquareCar.Replace("\"value\": 2500", "\"value\": 2340", StringComparison.Ordinal);
        var balance = bay.Daemon.Cars.GetBalance(new GetBalanceRequest { Asked = new() { CarFile = car, LoadsKg = Loads(200, 200, 180, 180) } });
        Assert.Equal(1108.4, balance.CgBehindFrontAxleMm.Estimate, 1);
        Assert.Equal(0, balance.CgLeftOfCentreMm.Estimate, 9);
    }

    [Fact]
    public void Axle_lifts_give_the_height_of_the_centre_of_gravity()
    {
        // tests/reference/vehicle-dynamics.json, cg_height_axle_lift.consistent_round_trip (derived): 10433.5237 N in front at 30 degrees, h = 0.34 m.
        // The same lift by height is 2300 mm sin 30 degrees = 1150 mm.
        var height = bay.Daemon.Cars.ComputeCgHeight(Lifts(Rear(0) with { Angle = 30 }, Rear(0) with { Mm = 1150 }));
        Assert.Equal(340, height.HeightMm.Estimate, 0.1);
        Assert.All(height.EachMm, mm => Assert.Equal(340, mm, 0.1));
        Assert.Contains("stands", height.Caution);
        Assert.Equal("SL-530", LiftRefused());
        Assert.Equal("SL-530", LiftRefused(Rear(0) with { Angle = 1 }));
        Assert.Equal("SL-530", LiftRefused(Rear(0) with { Angle = 30, Axle = Axle.Unspecified }));
        Assert.Equal("SL-530", LiftRefused(Rear(0)));
        Assert.Equal("SL-531", LiftRefused(Rear(0) with { Angle = 30 }, Rear(25) with { Angle = 30 }));
    }

    private static LiftOf Rear(double moreKg) => new(Axle.Rear, 10433.5237 / 9.81 + moreKg);

    private string LiftRefused(params LiftOf[] lifts) => bay.Code(() => bay.Daemon.Cars.ComputeCgHeight(Lifts(lifts)));

    private static ComputeCgHeightRequest Lifts(params LiftOf[] lifts)
    {
        var request = new ComputeCgHeightRequest
        {
            CarFile = AskingBay.SquareCar.Replace("\"value\": 2500", "\"value\": 2300", StringComparison.Ordinal), FrontRadiusMm = Q(300, 1), RearRadiusMm = Q(300, 1),
            // 2000 kg, 1.1 m behind the front axle of 2.3 m.
            FrontLoadKg = Q(2000 * 1.2 / 2.3, 0.2), RearLoadKg = Q(2000 * 1.1 / 2.3, 0.2),
        };
        request.Lifts.AddRange(lifts.Select(l => l.ToWire()));
        return request;
    }

    private string Refused(Action<AskWhatIfRequest> spoil)
    {
        var asked = new AskWhatIfRequest { Asked = Square };
        spoil(asked);
        return bay.Code(() => bay.Daemon.Cars.AskWhatIf(asked));
    }

    private void Turn(string corner, double turns) => bay.Rig.Simulator.DoAndWait(FormattableString.Invariant($$"""{"do":"turn","corner":"{{corner}}","turns":{{turns}}}"""));

    private static void Changed(WhatIfAnswer answer, params double[] by)
    {
        var (now, then) = (Each(answer.Now.LoadsKg), Each(answer.Then.LoadsKg));
        for (var i = 0; i < 4; i++)
            Assert.Equal(by[i], then[i].Estimate - now[i].Estimate, 1e-4);
    }

    private static MeasuredValue[] Each(CornerValues q) => [q.Lf, q.Rf, q.Lr, q.Rr];

    private static void Equal(CornerNumbers c, double lf, double rf, double lr, double rr, double within)
    {
        Assert.Equal(lf, c.Lf, within);
        Assert.Equal(rf, c.Rf, within);
        Assert.Equal(lr, c.Lr, within);
        Assert.Equal(rr, c.Rr, within);
    }

    private static CornerValues Loads(double lf, double rf, double lr, double rr) => new() { Lf = Q(lf, 0.3), Rf = Q(rf, 0.3), Lr = Q(lr, 0.3), Rr = Q(rr, 0.3) };

    private static MeasuredValue Q(double value, double u) => new() { Estimate = value, StandardUncertainty = u };

    private sealed record LiftOf(Axle Axle, double FrontKg, double? Angle = null, double? Mm = null)
    {
        public AxleLift ToWire()
        {
            var lift = new AxleLift { Lifted = Axle, OtherAxleLoadKg = Q(FrontKg, 0.2) };
            if (Angle is { } degrees)
                lift.AngleDeg = Q(degrees, 0.05);
            else if (Mm is { } mm)
                lift.LiftMm = Q(mm, 1);
            return lift;
        }
    }
}
