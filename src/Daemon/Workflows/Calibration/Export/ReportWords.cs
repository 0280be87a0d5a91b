using System.Globalization;
using Google.Protobuf.WellKnownTypes;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Export;

/// <summary>Numbers and words of the reports: always with a point, always UTC.</summary>
internal static class ReportWords
{
    public static string Number(double value, string format = "0.000") => value.ToString(format, CultureInfo.InvariantCulture);

    public static string Signed(double value) => value.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture);

    public static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string Time(Timestamp? time) => time is null ? "" : time.ToDateTime().ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);

    public static string Stage(Wire.ProcedureStage stage) => stage switch
    {
        Wire.ProcedureStage.Preload => "preload",
        Wire.ProcedureStage.CornerLoad => "corner load",
        Wire.ProcedureStage.Repetitions => "repetition",
        Wire.ProcedureStage.Creep => "creep",
        _ => "",
    };

    public static string Load(Wire.LoadStack stack) => stack.Masses.Count + stack.Ballast.Count == 0 ? "empty pad" : string.Join(" + ", stack.Masses.Concat(stack.Ballast));

    public static string State(Wire.ProcedureState state) => state switch
    {
        Wire.ProcedureState.Measuring => "not finished",
        Wire.ProcedureState.Review => "finished, not decided",
        Wire.ProcedureState.Adopted => "adopted",
        Wire.ProcedureState.Rejected => "rejected",
        Wire.ProcedureState.Abandoned => "abandoned",
        _ => "",
    };
}
