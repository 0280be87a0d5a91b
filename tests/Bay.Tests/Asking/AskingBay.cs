using ScaleLink.Api.V1;
using Shared.Rig;

namespace Bay.Tests.Asking;

/// <summary>A bay that the tests of calls share: the Heron settled on exact pads. What was refused before it stood there is kept.</summary>
public sealed class AskingBay : IDisposable
{
    /// <summary>Wheelbase 2500 mm, tracks 1500 mm; spring and tyre 50 N/mm at every wheel, so a ride rate of 25; no bars; the body leans about its centre of gravity.</summary>
    public const string SquareCar = """
        {
          "name": "square", "wheelbase_mm": { "value": 2500, "u": 1 }, "cg_height_mm": { "value": 400, "u": 5 }, "roll_axis_height_mm": { "value": 400, "u": 5 },
          "front": {
            "track_mm": { "value": 1500, "u": 1 }, "spring_rate_n_per_mm": { "value": 50, "u_percent": 1 }, "motion_ratio": { "value": 1, "u": 0.001 },
            "tyre_rate_n_per_mm": { "value": 50, "u_percent": 1 }, "perch": { "pitch_mm_per_turn": { "value": 2, "u": 0.01 }, "up_turns_left": 8, "down_turns_left": 8 }
          },
          "rear": {
            "track_mm": { "value": 1500, "u": 1 }, "spring_rate_n_per_mm": { "value": 50, "u_percent": 1 }, "motion_ratio": { "value": 1, "u": 0.001 },
            "tyre_rate_n_per_mm": { "value": 50, "u_percent": 1 }, "perch": { "pitch_mm_per_turn": { "value": 2, "u": 0.01 }, "up_turns_left": 8, "down_turns_left": 8 }
          },
          "ballast": [ { "name": "nose", "behind_front_axle_mm": -500, "left_of_centre_mm": 0, "height_mm": 400, "fitted_kg": 0, "capacity_kg": 60 } ],
          "targets": { "cross_weight_percent": 50, "cross_weight_tolerance_percent": 0.2 }
        }
        """;

    public AskingBay()
    {
        Rig.Zero();
        WithoutCar = Code(() => Daemon.Cars.GetBalance(new GetBalanceRequest()));
        WithoutHeightMeasurement = Code(() => Daemon.Patch.PlanShims(new PlanShimsRequest()));
        new CrewAtWork(Rig).ChooseHeron();
        WithoutLoads = Code(() => Daemon.Cars.AskWhatIf(new AskWhatIfRequest()));
        Rig.PutCarOn();
        Rig.Settled();
    }

    public string WithoutCar { get; }

    public string WithoutLoads { get; }

    public string WithoutHeightMeasurement { get; }

    internal BayRig Rig { get; } = new("none");

    internal DaemonProcess Daemon => Rig.Daemon;

    /// <summary>The code that a call is refused with.</summary>
    internal string Code(Action call) => new Calls(Rig).Code(_ => call());

    public void Dispose() => Rig.Dispose();
}

/// <summary>Test classes that share it.</summary>
[Trait("needs", "bay")]
[CollectionDefinition(Name)]
public sealed class AskingCollection : ICollectionFixture<AskingBay>
{
    public const string Name = "asking";
}
