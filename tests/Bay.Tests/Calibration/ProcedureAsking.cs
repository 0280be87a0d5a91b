using ScaleLink.Api.V1;

namespace Bay.Tests.Calibration;

/// <summary>Short ways to ask about a calibration procedure.</summary>
internal static class ProcedureAsking
{
    /// <summary>The calibration procedure at a corner as it stands.</summary>
    public static ProcedureView WatchOnce(this CalibrationProcedures.CalibrationProceduresClient procedures, string corner)
    {
        using var call = procedures.WatchProcedure(new WatchProcedureRequest { Corner = CornerOf(corner) });
        Assert.True(call.ResponseStream.MoveNext(TestContext.Current.CancellationToken).GetAwaiter().GetResult());
        return call.ResponseStream.Current;
    }

    public static Corner CornerOf(string corner) => Enum.Parse<Corner>(corner, ignoreCase: true);
}
