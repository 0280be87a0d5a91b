using System.CommandLine;
using Google.Protobuf;
using Grpc.Core;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary>Commands that ask the daemon once and show its answer: as lines, or with --json as the API's own JSON in snake case.</summary>
internal static class Answer
{
    private static readonly JsonFormatter Json = new(JsonFormatter.Settings.Default.WithPreserveProtoFieldNames(true).WithFormatDefaultValues(true));

    /// <summary>Lets a command make one call.</summary>
    public static Command Asks<T>(
        this Command command, CommonOptions common, Shell shell,
        Func<DaemonConnection, CallOptions, ParseResult, AsyncUnaryCall<T>> call, Func<T, IEnumerable<string>> page, Func<T, int>? exitCode = null)
        where T : IMessage
    {
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var answer = await daemon.Ask(options => call(daemon, options, parsed), stop);
            shell.Write(answer, parsed.GetValue(common.Json), page);
            return exitCode?.Invoke(answer) ?? ExitCodes.Done;
        });
        return command;
    }

    /// <summary>Writes an answer.</summary>
    public static void Write<T>(this Shell shell, T answer, bool json, Func<T, IEnumerable<string>> page)
        where T : IMessage
    {
        if (json)
            shell.WriteLine(Json.Format(answer));
        else
            foreach (var line in page(answer))
                shell.WriteLine(line);
    }
}
