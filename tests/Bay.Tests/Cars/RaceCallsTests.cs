using Bay.Tests.Asking;
using ScaleLink.Api.V1;
using Shared;

namespace Bay.Tests.Cars;

/// <summary>Start and finish with each driver, and the class minimum, over gRPC: by hand arithmetic, and by the simulator's own physics.</summary>
[Collection(AskingCollection.Name)]
public class RaceCallsTests(AskingBay bay)
{
    private const string Race = """
        "fuel": {
          "behind_front_axle_mm": 2000, "left_of_centre_mm": 0, "kg_per_litre": { "value": 0.75, "u": 0.01 },
          "weighed_litres": { "value": 30, "u": 1 }, "start_litres": { "value": 50, "u": 1 }, "finish_litres": { "value": 10, "u": 1 }
        },
        "drivers": [
          { "name": "first", "kg": { "value": 80, "u": 0.3 }, "behind_front_axle_mm": 1250, "left_of_centre_mm": 300, "in_car": true },
          { "name": "second", "kg": { "value": 70, "u": 0.3 }, "behind_front_axle_mm": 1250, "left_of_centre_mm": 300 }
        ],
        "class_minimum": { "kg": 1010, "margin_kg": 2, "with_driver": true, "fuel": "finish" },
        "targets"
        """;

    private static readonly string SquareCar = AskingBay.SquareCar.Replace("\"targets\"", Race, StringComparison.Ordinal);

    [Fact]
    public void Each_case_has_the_loads_that_moments_give()
    {
        // 20 litres are 15 kg at 2000 of 2500 mm: 3 kg in front, 12 behind, half on each side. 10 kg less at half the wheelbase, 300 of 750 mm
        // left: 5 on each axle, 10 (1/2 + 300/1500) = 7 from the left; by equal rates LF = LR, RF = RR. Own working.
        var balance = Ask(SquareCar);
        Assert.Equal([(FuelLevel.Start, "first"), (FuelLevel.Finish, "first"), (FuelLevel.Start, "second"), (FuelLevel.Finish, "second")], balance.Cases.Select(c => (c.Fuel, c.Driver)));
        Loads(balance.Cases[0], 268 + 1.5, 288 + 1.5, 257 + 6, 235 + 6);
        Loads(balance.Cases[1], 268 - 1.5, 288 - 1.5, 257 - 6, 235 - 6);
        Loads(balance.Cases[2], 268 + 1.5 - 3.5, 288 + 1.5 - 1.5, 257 + 6 - 3.5, 235 + 6 - 1.5);
        Loads(balance.Cases[3], 268 - 1.5 - 3.5, 288 - 1.5 - 1.5, 257 - 6 - 3.5, 235 - 6 - 1.5);
        // Start, second: LF 266, RF 288: perches bring them level by 11 kg, and cross weight to (288 - 11 + 259.5 - 11) / 1053.
        Assert.Equal(100 * 525.5 / 1053, balance.Cases[2].Trades.Single(t => t.Aim == BalanceAim.EqualFrontLoads).CrossWeightPercent, 1e-4);
        Assert.Equal(50, balance.Cases[3].Trades.Single(t => t.Aim == BalanceAim.CrossWeight).CrossWeightPercent, 1e-9);
    }

    [Fact]
    public void The_lightest_state_stands_against_the_minimum_with_its_margin()
    {
        // 1048 - 15 - 10 kg. Its uncertainty (JCGM 100:2008, 5.1.2): loads 4 x 0.3², litres 0.75² (1² + 1²), density (20 x 0.01)², drivers 2 x 0.3².
        var standing = Ask(SquareCar).ClassStanding;
        var guard = 2 + 1.95996 * Math.Sqrt(0.36 + 1.125 + 0.04 + 0.18);
        Assert.Equal((1010, "finish, second"), (standing.MinimumKg, standing.Lightest));
        Assert.Equal(1023, standing.LightestKg.Estimate, 1e-6);
        Assert.Equal(13, standing.OverKg, 1e-6);
        Assert.Equal(guard, standing.GuardKg, 1e-3);
        Assert.Equal(13 - guard, standing.SpareKg, 1e-3);
        Assert.Equal(0, standing.MissingKg);
        // A minimum 10 kg higher leaves 3 kg over it.
        Assert.Equal(guard - 3, Ask(SquareCar.Replace("\"kg\": 1010", "\"kg\": 1020", StringComparison.Ordinal)).ClassStanding.MissingKg, 1e-3);
        var dry = Ask(SquareCar.Replace("\"with_driver\": true, \"fuel\": \"finish\"", "\"with_driver\": false, \"fuel\": \"empty\"", StringComparison.Ordinal)).ClassStanding;
        Assert.Equal("empty tank, no driver", dry.Lightest);
        Assert.Equal(1048 - 30 * 0.75 - 80, dry.LightestKg.Estimate, 1e-6);
    }

    [Fact]
    public void A_car_that_states_none_of_it_has_neither_cases_nor_minimum()
    {
        var balance = Ask(AskingBay.SquareCar);
        Assert.Empty(balance.Cases);
        Assert.Null(balance.ClassStanding);
    }

    [Fact]
    public void The_cars_message_carries_what_its_file_states()
    {
        var car = bay.Daemon.Cars.GetCar(new GetCarRequest { Name = "Heron" });
        Assert.Equal((1015, 2, true, FuelLevel.Finish), (car.ClassMinimum.MinimumKg, car.ClassMinimum.MarginKg, car.ClassMinimum.WithDriver, car.ClassMinimum.Fuel));
        Assert.Equal((25, 45, 6), (car.Fuel.WeighedLitres.Estimate, car.Fuel.StartLitres.Estimate, car.Fuel.FinishLitres.Estimate));
        Assert.Equal([("first driver", true), ("second driver", false)], car.Drivers.Select(d => (d.Name, d.InCar)));
    }

    [Fact]
    public void Unusable_fuel_drivers_and_minimum_are_refused_by_their_codes()
    {
        Assert.Equal("SL-556", Refused("\"start_litres\": { \"value\": 50", "\"start_litres\": { \"value\": 5"));
        Assert.Equal("SL-557", Refused("\"value\": 70", "\"value\": 700"));
        Assert.Equal("SL-558", Refused("\"kg\": 1010", "\"kg\": -1"));
        Assert.Equal("SL-514", Refused("\"with_driver\": true, ", ""));
    }

    [Fact]
    public void Without_its_driver_the_simulated_car_carries_what_the_file_says_of_the_rest()
    {
        // The documents' car, its driver weighed out: the case puts the driver back in, the simulator's own physics has weighed it so.
        var heron = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json"))
            .Replace("\"in_car\": true", "\"in_car\": false", StringComparison.Ordinal).Replace("\"value\": 45", "\"value\": 25", StringComparison.Ordinal);
        var truth = bay.Rig.Simulator.TrueLoads();
        bay.Rig.Simulator.DoAndWait("""{"do":"driver","in":false}""");
        var bare = bay.Rig.Simulator.TrueLoads();
        bay.Rig.Simulator.DoAndWait("""{"do":"driver","in":true}""");
        bay.Rig.Simulator.DoAndWait("""{"do":"settle","seconds":1.5}""");
        bay.Rig.Settled();
        var now = Ask(heron, bare).Cases.Single(c => c is { Fuel: FuelLevel.Start, Driver: "first driver" }).Figures;
        Assert.Equal(80, truth.Sum() - bare.Sum(), 0.5);
        Assert.Equal(truth.Sum(), now.TotalKg.Estimate, 0.5);
        Assert.Equal(100 * (truth[0] + truth[1]) / truth.Sum(), now.FrontWeightPercent.Estimate, 0.1);
        Assert.Equal(100 * (truth[0] + truth[2]) / truth.Sum(), now.LeftSideWeightPercent.Estimate, 0.1);
        // Friction keeps some warp when the springs move: a few newtons a wheel, no source but the simulator's description.
        Assert.Equal(100 * (truth[1] + truth[2]) / truth.Sum(), now.CrossWeightPercent.Estimate, 0.6);
    }

    private Balance Ask(string car, params double[] kg)
    {
        var loads = kg.Length == 4 ? kg : [268, 288, 257, 235];
        return bay.Daemon.Cars.GetBalance(new GetBalanceRequest { Asked = new() { CarFile = car, LoadsKg = new() { Lf = Q(loads[0]), Rf = Q(loads[1]), Lr = Q(loads[2]), Rr = Q(loads[3]) } } });
    }

    private string Refused(string part, string instead) => bay.Code(() => Ask(SquareCar.Replace(part, instead, StringComparison.Ordinal)));

    private static void Loads(RaceCase state, params double[] kg)
    {
        MeasuredValue[] each = [state.Figures.LoadsKg.Lf, state.Figures.LoadsKg.Rf, state.Figures.LoadsKg.Lr, state.Figures.LoadsKg.Rr];
        for (var i = 0; i < 4; i++)
            Assert.Equal(kg[i], each[i].Estimate, 1e-4);
    }

    private static MeasuredValue Q(double value) => new() { Estimate = value, StandardUncertainty = 0.3 };
}
