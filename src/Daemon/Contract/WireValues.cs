using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using Timestamp = Google.Protobuf.WellKnownTypes.Timestamp;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Contract;

/// <summary>Values of the pure code in the words of the public API, and back.</summary>
internal static class WireValues
{
    public static Wire.CornerValues ToWire(this Corners values, Corners uncertainties) => new()
    {
        Lf = Known(values.LF, uncertainties.LF), Rf = Known(values.RF, uncertainties.RF),
        Lr = Known(values.LR, uncertainties.LR), Rr = Known(values.RR, uncertainties.RR),
    };

    public static Wire.MeasuredValue ToWire(this Value value) => Wire.MeasuredValue.Of(value);

    /// <summary>A value that the caller gives. Without an uncertainty of his it counts as exact; without a value it is not a number.</summary>
    public static Value ToGiven(this Wire.MeasuredValue? given) => given is null ? new(double.NaN, 0) : given.AsValue with { StandardUncertainty = given.StandardUncertainty };

    public static Wire.Diagnostic ToWire(this Diagnostic told) => Wire.Diagnostic.Of(told);

    public static Wire.LoadFigures ToWire(this LoadSummary s) => new()
    {
        LoadsKg = s.Loads.ToWire(s.Covariance.DiagonalPart.Map(v => Math.Sqrt(Math.Max(0, v)))),
        TotalKg = s.TotalKg.ToWire(),
        CrossWeightPercent = s.CrossWeightPercent.ToWire(),
        FrontWeightPercent = s.FrontWeightPercent.ToWire(),
        LeftSideWeightPercent = s.LeftSideWeightPercent.ToWire(),
        FrontLeftRightDifferenceKg = s.FrontLeftRightDifferenceKg.ToWire(),
        RearLeftRightDifferenceKg = s.RearLeftRightDifferenceKg.ToWire(),
    };

    public static Timestamp ToWire(this DateTimeOffset at) => Timestamp.FromDateTimeOffset(at);

    /// <exception cref="global::Grpc.Core.RpcException">It names no corner.</exception>
    public static Corner ToCorner(this Wire.Corner corner) =>
        corner.ToMeasure() ?? throw ApiErrors.BadRequest(ServiceCodes.NoPadThere, "corner", "A corner is missing.", "Name LF, RF, LR or RR.");

    private static Wire.MeasuredValue Known(double value, double uncertainty) => Wire.MeasuredValue.Of(new Value(value, uncertainty));
}
