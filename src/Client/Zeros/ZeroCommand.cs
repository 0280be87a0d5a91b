using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Json;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Zeros;

/// <summary><c>scalelink zero</c>: takes the zero of empty pads.</summary>
internal static class ZeroCommand
{
    public static Command Create(CommonOptions common, Shell shell)
    {
        var who = WhoOption.Create(shell);
        var because = new Option<string>("--because") { Description = "Why a pad of which no zero is known is empty although it does not read so.", DefaultValueFactory = _ => "", HelpName = "REASON" };
        var corners = new Argument<string[]>("corner") { Description = "Pads to zero: LF, RF, LR, RR. None: all.", Arity = new ArgumentArity(0, 4) };
        corners.AcceptOnlyFromAmong("LF", "RF", "LR", "RR");
        var command = new Command("zero", $"Takes the present reading of empty pads as their zero. {Cautions.Zero}") { corners, who, because };
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var json = parsed.GetValue(common.Json);
            if (!json)
                shell.WriteLine(Cautions.Zero);
            var request = new ZeroPadsRequest { Who = parsed.GetValue(who), Because = parsed.GetValue(because) };
            request.Corners.AddRange(parsed.GetValue(corners)!.Select(WireCorners.Named));
            var answer = await daemon.Ask(options => daemon.PadControl.ZeroPadsAsync(request, options), stop);
            if (json)
                shell.WriteJson(new ZeroResultsJson([.. answer.Results.Select(ToJson)]), ClientJson.Default.ZeroResultsJson);
            else
                foreach (var result in answer.Results)
                    shell.WriteLine(Line(result, shell.Glyphs));
            return answer.Results.All(r => r.Zero is not null) ? ExitCodes.Done : ExitCodes.NotAchieved;
        });
        return command;
    }

    private static string Line(ZeroResult result, Glyphs glyphs) => result.Refused is { } refused
        ? $"{result.Corner.Name()} refused  {glyphs.Tell(DiagnosticReader.Read(refused))}"
        : $"{result.Corner.Name()} zeroed   {(result.Zero is { HasShiftKg: true } zero ? glyphs.Line($"moved by {Kg(zero.ShiftKg):+0.00} from the zero before") : "its first zero")}";

    private static ZeroResultJson ToJson(ZeroResult result) => new(
        result.Corner.Name(), ZeroJson.Of(result.Zero), result.Refused is { } refused ? DiagnosticReader.Read(refused) : null);
}
