using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Workflows.WorkSessions.Export;
using ScaleLink.Daemon.Workflows.WorkSessions.Steps;
using ScaleLink.Weighing.WorkSessions.Planning;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.WorkSessions.Service;

/// <summary>Work sessions over gRPC, for reading.</summary>
internal sealed class WorkSessionsService(SessionDesk desk, SessionLedger sessions, SessionAnswer session, TimeProvider time) : Wire.WorkSessions.WorkSessionsBase
{
    private const uint MostListed = 100;

    public override Task<Wire.GetSessionResponse> GetSession(Wire.GetSessionRequest request, ServerCallContext context) => Task.FromResult(session.Now());

    public override async Task WatchSession(Wire.WatchSessionRequest request, IServerStreamWriter<Wire.GetSessionResponse> responses, ServerCallContext context)
    {
        using var changes = new ChangeNudges(nudge => desk.Changed += nudge, nudge => desk.Changed -= nudge, time);
        await foreach (var _ in changes.Items.ReadAllAsync(context.CancellationToken))
            await responses.WriteAsync(session.Now(), context.CancellationToken);
    }

    public override Task<Wire.ListSessionsResponse> ListSessions(Wire.ListSessionsRequest request, ServerCallContext context)
    {
        var list = new Wire.ListSessionsResponse();
        list.Sessions.AddRange(sessions.All().Reverse().Where(s => request.Car.Length == 0 || s.Car.Name == request.Car)
            .Take((int)Math.Min(request.HasMost ? request.Most : MostListed, 10_000)).Select(s => SessionMapping.Line(desk.View(s))));
        return Task.FromResult(list);
    }

    public override Task<Wire.Session> ShowSession(Wire.ShowSessionRequest request, ServerCallContext context) =>
        Task.FromResult(SessionMapping.Session(desk.View(Find(request.SessionId))));

    public override Task<Wire.SessionComparison> CompareSessions(Wire.CompareSessionsRequest request, ServerCallContext context)
    {
        var (first, second) = (Find(request.FirstId), Find(request.SecondId));
        return Task.FromResult(ComparisonMapping.Of(desk.View(first), desk.View(second), SessionComparison.Of(first, second)));
    }

    public override Task<Wire.ExportSessionResponse> ExportSession(Wire.ExportSessionRequest request, ServerCallContext context)
    {
        var view = desk.View(Find(request.SessionId));
        var (text, type, ending) = request.Format switch
        {
            Wire.ExportFormat.Csv => (SessionCsv.Of(view.Session), "text/csv; charset=utf-8", "csv"),
            Wire.ExportFormat.Json => (Google.Protobuf.JsonFormatter.Default.Format(SessionMapping.Session(view)), "application/json", "json"),
            Wire.ExportFormat.Html => (SessionSheet.Of(view, sessions.Remarks(view.Session)), "text/html; charset=utf-8", "html"),
            _ => throw ApiErrors.BadRequest(SessionCodes.FormatMissing, "format", "No format is given.", "Ask for CSV, JSON or HTML."),
        };
        return Task.FromResult(new Wire.ExportSessionResponse
        {
            Content = Google.Protobuf.ByteString.CopyFromUtf8(text),
            MediaType = type,
            FileName = $"session-{view.Session.Id}.{ending}",
        });
    }

    public override Task<Wire.Prediction> PredictTurns(Wire.PredictTurnsRequest request, ServerCallContext context)
    {
        var session = Weighed(request.SessionId);
        // What was turned since the last reading is in the next one too.
        var (known, turns) = (session.Known!, session.OpenTurns + request.Turns.ToCorners());
        if (SessionRules.CannotBe(turns, known) is { } mistake)
            throw new DiagnosticException(mistake);
        return Task.FromResult(WeighingMapping.Prediction(StatedPrediction.Of(turns, PerchPlanner.Forecast(known, turns))));
    }

    public override Task<Wire.PerchPlan> PlanTurns(Wire.PlanTurnsRequest request, ServerCallContext context)
    {
        var session = Weighed(request.SessionId);
        // A plan from the reading before the turns would have them made twice.
        if (session.Open.Count > 0 || session.NeedsName)
            throw ApiErrors.NotNow(SessionCodes.NotInThisState, session.NeedsName ? "A change waits for its name." : $"{CrewWords.Turns(session.OpenTurns)} is on record and not read yet.",
                session.NeedsName ? "Name the change, then plan." : "Settle and weigh, then plan; or take the adjustment back.");
        return Task.FromResult(SessionMapping.Plan(SessionPlan.Of(session, request.Refine)!));
    }

    private WorkSession Find(string id) => sessions.Find(id)
        ?? throw ApiErrors.NotFound(SessionCodes.SessionNotFound, $"There is no session {PlainText.Clean(id, 40)}.", "List them: scalelink work-session list.");

    private WorkSession Weighed(string id)
    {
        var session = id.Length > 0 ? Find(id) : desk.Current?.Session ?? throw ApiErrors.NotNow(SessionCodes.NoSession, "No session is open in this bay.", "Start one: Work session on the page, or scalelink work-session start.");
        return session.Known is not null ? session
            : throw ApiErrors.NotNow(SessionCodes.NotInThisState, "There is no baseline yet.", "Finish the preparation, settle the car, and weigh the baseline first.");
    }
}
