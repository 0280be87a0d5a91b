using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Documents;

namespace ScaleLink.Weighing.Questions;

/// <summary>Reads axle lifts out of a document.</summary>
static class LiftReader
{
    public static (AxleLiftSetup, IReadOnlyList<AxleLift>)? Read(JsonBlock? block, CarModel car, LoadSummary? level)
    {
        if (block is null)
            return null;
        var (front, rear) = (Needed(block, "front_radius_mm"), Needed(block, "rear_radius_mm"));
        var lifts = block.List("lifts");
        if (front is not { } f || rear is not { } r || level is null)
            return null;
        // The axle loads of the same four readings share their error; taken apart they are good to root two of one load's.
        var u = Math.Sqrt(level.Covariance.VarianceOf(Shares.Front));
        var setup = new AxleLiftSetup(car.WheelbaseMm, f, r, new(level.Loads.LF + level.Loads.RF, u), new(level.Loads.LR + level.Loads.RR, u));
        var read = lifts.Select(l => Lift(l, setup)).ToList();
        block.Finish();
        return read.Contains(null) ? null : (setup, [.. read.OfType<AxleLift>()]);
    }

    static AxleLift? Lift(JsonBlock block, AxleLiftSetup setup)
    {
        var lifted = block.Text("lifted");
        var (load, height, angle) = (Needed(block, "other_axle_load_kg"), block.Stated("lift_mm"), block.Stated("angle_deg"));
        block.Finish();
        if (lifted is not ("front" or "rear"))
            block.Note(CarCodes.WrongKind, "lifted", $"{block.At("lifted")} names no axle.", "Write \"front\" or \"rear\": the axle that was raised.");
        if (height is null == angle is null)
            block.Note(CarCodes.MissingField, "lift_mm", $"{block.Place} needs one of lift_mm and angle_deg.", "Give the rise of the wheel centres, or the pitch of the car.");
        if (load is not { } kg || lifted is not ("front" or "rear") || height is null == angle is null)
            return null;
        var axle = lifted == "front" ? Axle.Front : Axle.Rear;
        return height is { } mm ? AxleLift.ByHeight(axle, kg.Value, mm.Value, setup) : new AxleLift(axle, kg.Value, angle!.Value.Value);
    }

    static Stated? Needed(JsonBlock block, string key)
    {
        if (!block.Has(key))
            block.Missing(key, "{ \"value\": 300, \"u\": 2 }");
        return block.Stated(key);
    }
}
