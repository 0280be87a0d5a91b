using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Writes a car as its document.</summary>
static class CarFileText
{
    static readonly JsonSerializerOptions Layout = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The document; <see cref="CarFile.Read(string)"/> gives the same car back.</summary>
    public static string Of(CarModel car)
    {
        var suspension = car.Suspension;
        var (front, rear) = (Shared(suspension.LF, suspension.RF), Shared(suspension.LR, suspension.RR));
        var corners = new JsonObject();
        foreach (var corner in Corners.All)
            if (suspension[corner] != (corner is Measure.Corner.LF or Measure.Corner.RF ? front : rear))
                corners[$"{corner}"] = Corner(suspension[corner]);
        var document = new JsonObject
        {
            ["name"] = car.Name,
            ["wheelbase_mm"] = Of(car.WheelbaseMm),
            ["cg_height_mm"] = Of(car.CgHeightMm),
            ["roll_axis_height_mm"] = Of(car.RollAxisHeightMm),
            ["front"] = Axle(car.FrontTrackMm, front, car.FrontBar),
            ["rear"] = Axle(car.RearTrackMm, rear, car.RearBar),
            ["corners"] = corners.Count > 0 ? corners : null,
            ["shared_spring_uncertainty_percent"] = 100 * car.SharedSpringUncertainty,
            ["shared_tyre_uncertainty_percent"] = 100 * car.SharedTyreUncertainty,
            ["smallest_turn"] = car.SmallestTurn,
            ["ballast"] = car.BallastStations.Count > 0 ? new JsonArray([.. car.BallastStations.Select(Station)]) : null,
            ["targets"] = Targets(car.Targets),
            ["ride_height_marks"] = car.RideHeightMarks is { } marks ? new JsonObject(Corners.All.ToArray().Select(c => KeyValuePair.Create($"{c}", (JsonNode?)Mark(marks[c])))) : null,
            ["fuel"] = RaceText.Fuel(car.Fuel),
            ["drivers"] = car.Drivers.Count > 0 ? new JsonArray([.. car.Drivers.Select(RaceText.Driver)]) : null,
            ["class_minimum"] = RaceText.Class(car.Class),
            ["setup"] = car.Setup.Count > 0 ? SheetBlockText.Of(car.Setup) : null,
        };
        return Without(document).ToJsonString(Layout);
    }

    // A corner cannot take a limit of its axle back, so an axle states only those that both have.
    static CornerSetup Shared(CornerSetup left, CornerSetup right) => left with
    {
        LowestRideHeightMm = left.LowestRideHeightMm == right.LowestRideHeightMm ? left.LowestRideHeightMm : null,
        HighestRideHeightMm = left.HighestRideHeightMm == right.HighestRideHeightMm ? left.HighestRideHeightMm : null,
    };

    static JsonObject Axle(Stated track, CornerSetup corner, AntiRollBar? bar)
    {
        var axle = Corner(corner);
        axle.Insert(0, "track_mm", Of(track));
        if (bar is not null)
            axle["bar"] = new JsonObject { ["rate_n_per_mm"] = Of(bar.RateNPerMm), ["connected"] = bar.Connected };
        return axle;
    }

    static JsonObject Corner(CornerSetup setup) => Without(new()
    {
        ["spring_rate_n_per_mm"] = Of(setup.SpringRateNPerMm),
        ["motion_ratio"] = Of(setup.MotionRatio),
        ["tyre_rate_n_per_mm"] = Of(setup.TyreRateNPerMm),
        ["perch"] = new JsonObject
        {
            ["pitch_mm_per_turn"] = Of(setup.Perch.PitchMmPerTurn),
            ["can_turn"] = setup.Perch.CanTurn,
            ["up_turns_left"] = setup.Perch.UpTurnsLeft,
            ["down_turns_left"] = setup.Perch.DownTurnsLeft,
        },
        ["lowest_ride_height_mm"] = setup.LowestRideHeightMm,
        ["highest_ride_height_mm"] = setup.HighestRideHeightMm,
    });

    static JsonObject Targets(CarTargets targets) => Without(new()
    {
        ["cross_weight_percent"] = targets.CrossWeightPercent,
        ["cross_weight_tolerance_percent"] = targets.CrossWeightTolerancePercent,
        ["ride_heights_mm"] = targets.RideHeightsMm is { } h ? new JsonObject { ["LF"] = h.LF, ["RF"] = h.RF, ["LR"] = h.LR, ["RR"] = h.RR } : null,
        ["rake_mm"] = targets.RakeMm,
        ["left_right_difference_mm"] = targets.LeftRightDifferenceMm,
        ["ride_height_tolerance_mm"] = targets.RideHeightToleranceMm,
        ["rake_tolerance_mm"] = targets.RakeToleranceMm,
    });

    static JsonObject Station(BallastStation station)
    {
        var block = Of(station.Place);
        block.Insert(0, "name", station.Name);
        block["fitted_kg"] = station.FittedKg;
        block["capacity_kg"] = station.CapacityKg;
        return block;
    }

    static JsonObject Mark(Place place) => new() { ["behind_front_axle_mm"] = place.BehindFrontAxleMm, ["left_of_centre_mm"] = place.LeftOfCentreMm };

    internal static JsonObject Of(Place place) => new()
    {
        ["behind_front_axle_mm"] = place.BehindFrontAxleMm,
        ["left_of_centre_mm"] = place.LeftOfCentreMm,
        ["height_mm"] = place.HeightMm,
    };

    internal static JsonObject Of(Stated stated) => new() { [stated.Assumed ? "guess" : "value"] = stated.Estimate, ["u"] = stated.StandardUncertainty };

    static JsonObject Without(JsonObject block)
    {
        foreach (var key in block.Where(f => f.Value is null).Select(f => f.Key).ToList())
            block.Remove(key);
        return block;
    }
}
