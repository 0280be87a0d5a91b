using System.Collections.Concurrent;
using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Client.Watch;

namespace ScaleLink.Client.Demo;

/// <summary>The demo as a live picture.</summary>
internal sealed class DemoScreen(Shell shell) : ICrewBoard
{
    private readonly ConcurrentQueue<Action<StepTrace>> _marks = new();
    private volatile string? _action;

    /// <summary>Runs the story and keeps the picture until <paramref name="stop"/>.</summary>
    public async Task<int> Run(DemoSetup setup, CancellationToken stop)
    {
        try
        {
            shell.WriteLine("Starting a simulated car on pads and the daemon ...");
            await using var bay = await DemoBay.Start(setup, shell.Time, stop);
            shell.WriteLine($"{DemoPlaces.Of(bay)}\nbay file and ledger in {bay.Folder}, deleted at the end");
            using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
            var screen = Screen(bay);
            var picture = screen.Run(10, end.Token);
            var story = Tell(bay, end.Token);
            var accompanied = bay.Accompany(story, end.Token);
            try
            {
                await First(picture, accompanied, () => bay.Guard(end.Token));
            }
            finally
            {
                await end.CancelAsync();
                await Task.WhenAll(picture, story, accompanied).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // The end that was asked for.
        }

        return ExitCodes.Done;
    }

    public void Say(string doing) => _action = doing;

    public void Announce(string label, double? predictedPercent) => _marks.Enqueue(trace => trace.Announce(label, predictedPercent));

    public void HandsOff() => _marks.Enqueue(trace => trace.HandsOff());

    public void Read(Loads reading)
    {
        // The picture shows the reading itself.
    }

    private WatchScreen Screen(DemoBay bay)
    {
        WatchScreen? screen = null;
        return screen = new WatchScreen(shell, bay.Daemon)
        {
            Action = () => _action,
            Foot = DemoPlaces.Short(bay),
            OnView = _ =>
            {
                while (_marks.TryDequeue(out var mark))
                    mark(screen!.Trace);
            },
        };
    }

    private async Task Tell(DemoBay bay, CancellationToken stop) =>
        Say(DemoPlaces.Ending(await new Crew(bay, this, shell.Glyphs, shell.Time).WorkSessions(stop), shell.Glyphs));

    // The picture goes on when the story is over, and ends when the bay does.
    private static async Task First(Task picture, Task story, Func<Task> guard)
    {
        await await Task.WhenAny(picture, story);
        await await Task.WhenAny(picture, guard());
    }
}
