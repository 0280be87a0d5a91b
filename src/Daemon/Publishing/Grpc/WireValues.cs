using Google.Protobuf.WellKnownTypes;
using ScaleLink.Weighing;
using ScaleLink.Weighing.Balance;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Values of the pure code in the words of the public API, and back.</summary>
internal static class WireValues
{
    public static Wire.CornerNumbers ToWire(this Corners c) => new() { Lf = c.LF, Rf = c.RF, Lr = c.LR, Rr = c.RR };

    public static Corners ToCorners(this Wire.CornerNumbers? c) => c is null ? default : new(c.Lf, c.Rf, c.Lr, c.Rr);

    public static Wire.CornerQuantities ToWire(this Corners values, Corners uncertainties) => new()
    {
        Lf = Quantity(values.LF, uncertainties.LF), Rf = Quantity(values.RF, uncertainties.RF),
        Lr = Quantity(values.LR, uncertainties.LR), Rr = Quantity(values.RR, uncertainties.RR),
    };

    public static Wire.Quantity ToWire(this Quantity q)
    {
        var wire = Quantity(q.Value, q.StandardUncertainty);
        if (q.DegreesOfFreedom is { } few)
            wire.DegreesOfFreedom = few;
        return wire;
    }

    public static Quantity ToQuantity(this Wire.Quantity? q) =>
        q is null ? new(double.NaN, 0) : new(q.Value, q.HasStandardUncertainty ? q.StandardUncertainty : 0, q.HasDegreesOfFreedom ? q.DegreesOfFreedom : null);

    public static Wire.Diagnostic ToWire(this Diagnostic f)
    {
        var wire = new Wire.Diagnostic { Code = f.Code.Text, Message = f.Message, Remedy = f.Remedy, Where = f.Where };
        if (f.Line is { } line)
            wire.Line = (uint)line;
        return wire;
    }

    public static Wire.LoadFigures ToWire(this LoadSummary s) => new()
    {
        LoadsKg = s.Loads.ToWire(s.Covariance.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v)))),
        TotalKg = s.TotalKg.ToWire(),
        CrossWeightPercent = s.CrossWeightPercent.ToWire(),
        FrontSharePercent = s.FrontSharePercent.ToWire(),
        LeftSharePercent = s.LeftSharePercent.ToWire(),
        FrontSideDifferenceKg = s.FrontSideDifferenceKg.ToWire(),
        RearSideDifferenceKg = s.RearSideDifferenceKg.ToWire(),
    };

    public static Timestamp ToWire(this DateTimeOffset at) => Timestamp.FromDateTimeOffset(at);

    /// <exception cref="global::Grpc.Core.RpcException">It names no corner.</exception>
    public static Corner ToCorner(this Wire.Corner corner) => corner switch
    {
        Wire.Corner.Lf => Corner.LF,
        Wire.Corner.Rf => Corner.RF,
        Wire.Corner.Lr => Corner.LR,
        Wire.Corner.Rr => Corner.RR,
        _ => throw ApiErrors.BadRequest(ServiceCodes.NoPadThere, "corner", "A corner is missing.", "Name LF, RF, LR or RR."),
    };

    private static Wire.Quantity Quantity(double value, double uncertainty) => new() { Value = value, StandardUncertainty = uncertainty };
}
