using ScaleLink.Weighing.Documents;
using ScaleLink.Weighing.SetupSheets;

namespace ScaleLink.Weighing.Cars.Files;

/// <summary>Reads a car out of its document and remembers where each value stood.</summary>
sealed class CarReader(JsonBlock root)
{
    readonly Dictionary<string, string> places = new()
    {
        ["wheelbase"] = "wheelbase_mm",
        ["front track"] = "front.track_mm",
        ["rear track"] = "rear.track_mm",
        ["front bar rate"] = "front.bar.rate_n_per_mm",
        ["rear bar rate"] = "rear.bar.rate_n_per_mm",
        ["centre of gravity height"] = "cg_height_mm",
        ["roll axis height"] = "roll_axis_height_mm",
        ["smallest turn"] = "smallest_turn",
        ["class minimum"] = "class_minimum",
    };

    /// <summary>Where the value of that name stands; the name itself for a block or field of the same name.</summary>
    public string PlaceOf(string name) => Within(places.GetValueOrDefault(name, name));

    public CarModel? Read()
    {
        root.Earlier("lean_axis_height_mm", "roll_axis_height_mm");
        root.Earlier("shared_spring_doubt_percent", "shared_spring_uncertainty_percent");
        root.Earlier("shared_tyre_doubt_percent", "shared_tyre_uncertainty_percent");
        if (!root.Has("name"))
            root.Missing("name", "\"Heron\"");
        var name = root.Name("name") ?? "";
        root.Text("note");
        root.Text("$schema");
        var wheelbase = Needed(root, "wheelbase_mm");
        var cg = Needed(root, "cg_height_mm", Unknowns.CgHeight);
        var tilt = root.Stated("roll_axis_height_mm", Unknowns.RollAxis) ?? Unknowns.RollAxis;
        var (frontBlock, rearBlock) = (Axle("front"), Axle("rear"));
        var (front, rear) = (AxleReader.Read(frontBlock), AxleReader.Read(rearBlock));
        var overrides = root.Block("corners");
        var corners = new PerCorner<CornerSetup?>(
            Corner(overrides, Measure.Corner.LF, front), Corner(overrides, Measure.Corner.RF, front),
            Corner(overrides, Measure.Corner.LR, rear), Corner(overrides, Measure.Corner.RR, rear));
        overrides?.Finish();
        var (springs, tyres) = (root.Number("shared_spring_uncertainty_percent"), root.Number("shared_tyre_uncertainty_percent"));
        var (turn, ballast, targets) = (root.Number("smallest_turn") ?? 0.25, Ballast(), TargetReader.Read(root.Block("targets")));
        var (fuel, drivers, rule) = (RaceReader.Fuel(root.Block("fuel")), RaceReader.Drivers(root), RaceReader.Class(root.Block("class_minimum")));
        var marks = Marks(root.Block("ride_height_marks"));
        var setup = SheetBlock.Read(root.Block("setup")) ?? SheetContent.Empty;
        if (wheelbase is not { } length || cg is not { } height || front?.Track is not { } frontTrack || rear?.Track is not { } rearTrack
            || corners is not { LF: { } lf, RF: { } rf, LR: { } lr, RR: { } rr })
            return null;
        var car = new CarModel
        {
            Name = name, WheelbaseMm = length, FrontTrackMm = frontTrack, RearTrackMm = rearTrack, CgHeightMm = height, RollAxisHeightMm = tilt,
            Suspension = new(lf, rf, lr, rr), FrontBar = front.Bar, RearBar = rear.Bar,
            SmallestTurn = turn, BallastStations = ballast, Targets = targets, Fuel = fuel, Drivers = drivers, Class = rule, Setup = setup, RideHeightMarks = marks,
        }.WithUsualSharedUncertainties();
        return car with { SharedSpringUncertainty = springs / 100 ?? car.SharedSpringUncertainty, SharedTyreUncertainty = tyres / 100 ?? car.SharedTyreUncertainty };
    }

    public static Stated? Needed(JsonBlock block, string key, Stated? unknown = null)
    {
        if (!block.Has(key))
            block.Missing(key, unknown is null ? "{ \"value\": 0, \"u\": 0 }" : "{ \"value\": 0, \"u\": 0 } or \"unknown\"");
        return block.Stated(key, unknown);
    }

    JsonBlock? Axle(string key)
    {
        if (!root.Has(key))
            root.Missing(key, "{ ... }: the springs, tyres and perches of that axle");
        return root.Block(key);
    }

    CornerSetup? Corner(JsonBlock? overrides, Corner corner, AxleSetup? axle)
    {
        var own = overrides?.Block($"{corner}");
        foreach (var (name, key) in new[] { ("spring rate", "spring_rate_n_per_mm"), ("motion ratio", "motion_ratio"), ("tyre rate", "tyre_rate_n_per_mm"), ("perch pitch", "perch.pitch_mm_per_turn"), ("perch", "perch") })
            places[$"{corner} {name}"] = $"{(own?.Has(key.Split('.')[0]) == true ? $"corners.{corner}" : corner is Measure.Corner.LF or Measure.Corner.RF ? "front" : "rear")}.{key}";
        return axle?.Corner is { } setup ? own is null ? setup : AxleReader.Change(own, setup) : null;
    }

    static PerCorner<Place>? Marks(JsonBlock? block)
    {
        if (block is null)
            return null;
        var each = Corners.All.ToArray().Select(c => Mark(block, $"{c}")).ToList();
        block.Finish();
        return each is [{ } lf, { } rf, { } lr, { } rr] ? new(lf, rf, lr, rr) : null;
    }

    static Place? Mark(JsonBlock block, string corner)
    {
        if (!block.Has(corner))
            block.Missing(corner, "{ \"behind_front_axle_mm\": 600, \"left_of_centre_mm\": 700 }");
        if (block.Block(corner) is not { } mark)
            return null;
        var place = mark.Place();
        mark.Finish();
        return place;
    }

    List<BallastStation> Ballast() =>
    [
        .. root.List("ballast").Select(block =>
        {
            var station = new BallastStation(block.Name("name") ?? "", block.Place(), block.Number("fitted_kg") ?? 0, block.Number("capacity_kg") ?? 0);
            if (!block.Has("name"))
                block.Missing("name", "\"...\"");
            if (!block.Has("capacity_kg"))
                block.Missing("capacity_kg", "20");
            block.Finish();
            return station;
        }),
    ];

    string Within(string place) => root.Place.Length == 0 ? place : $"{root.Place}.{place}";
}
