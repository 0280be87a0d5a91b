using System.CommandLine;
using ScaleLink.Api.V1;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.WorkSessions;

/// <summary>Sessions on record as commands: list, show, compare, export.</summary>
internal static class SessionRecords
{
    public static IEnumerable<Command> All(CommonOptions common, Shell shell) => [Cautions(common, shell), List(common, shell), Show(common, shell), Compare(common, shell), Export(common, shell)];

    private static Argument<string> Id(string name = "id") => new(name) { Description = "A session; scalelink work-session list shows them.", HelpName = "ID" };

    private static Command Cautions(CommonOptions common, Shell shell) => new Command("cautions", "All that can hurt in the session in the bay, in full, and who has read it.").Asks(common, shell,
        (daemon, options, _) => daemon.WorkSessions.GetSessionAsync(new GetSessionRequest(), options), r => RecordsPage.Cautions(r.Session, shell.Size().Width));

    private static Command List(CommonOptions common, Shell shell)
    {
        var car = new Option<string>("--car") { Description = "Only those of this car.", DefaultValueFactory = _ => "" };
        return new Command("list", "Sessions on record, newest first.") { car }.Asks(common, shell,
            (daemon, options, parsed) => daemon.WorkSessions.ListSessionsAsync(new ListSessionsRequest { Car = parsed.GetValue(car) }, options), RecordsPage.List);
    }

    private static Command Show(CommonOptions common, Shell shell)
    {
        var id = Id();
        return new Command("show", "One session, as it ended or stands.") { id }.Asks(common, shell,
            (daemon, options, parsed) => daemon.WorkSessions.ShowSessionAsync(new ShowSessionRequest { SessionId = parsed.GetValue(id) }, options), s => RecordsPage.Show(s, shell.Glyphs));
    }

    private static Command Compare(CommonOptions common, Shell shell)
    {
        var (first, second) = (Id("first"), Id("second"));
        return new Command("compare", "Two sessions beside each other.") { first, second }.Asks(common, shell,
            (daemon, options, parsed) => daemon.WorkSessions.CompareSessionsAsync(new CompareSessionsRequest { FirstId = parsed.GetValue(first), SecondId = parsed.GetValue(second) }, options),
            c => RecordsPage.Compare(c, shell.Glyphs));
    }

    private static Command Export(CommonOptions common, Shell shell)
    {
        var id = Id();
        var command = new Command("export", "A session as a file.") { id };
        var export = new ExportOptions(command);
        command.SetAction(async (parsed, stop) =>
        {
            await using var daemon = common.Connect(parsed, shell);
            var request = new ExportSessionRequest { SessionId = parsed.GetValue(id), Format = export.Format(parsed) };
            var file = await daemon.Ask(o => daemon.WorkSessions.ExportSessionAsync(request, o), stop);
            export.Write(parsed, shell, file.FileName, file.Content);
            return ExitCodes.Done;
        });
        return command;
    }
}
