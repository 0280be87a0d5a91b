using System.Collections.Concurrent;
using System.Reflection;
using Xunit.v3;

[assembly: Shared.HangWatch]

namespace Shared;

/// <summary>
/// Fails a test that hangs, by name. Nearly every wait of the tests has a limit of its own; a call that never comes back has none. Such a
/// test is cancelled first, so that one that listens fails alone; one that does not ends its process.
/// </summary>
[AttributeUsage(AttributeTargets.Assembly)]
public sealed class HangWatchAttribute : BeforeAfterTestAttribute
{
    // The longest test takes a minute or two on a quiet machine; in the long forms half an hour.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(Environment.GetEnvironmentVariable("SCALELINK_LONG") == "1" ? 120 : 10);
    private static readonly TimeSpan ToListen = TimeSpan.FromSeconds(30);
    private static readonly ConcurrentDictionary<string, Timer> Running = new();

    public override void Before(MethodInfo methodUnderTest, IXunitTest test)
    {
        var context = TestContext.Current;
        Running[test.UniqueID] = new Timer(_ => Cancel(test, context), null, Longest, Timeout.InfiniteTimeSpan);
    }

    public override void After(MethodInfo methodUnderTest, IXunitTest test)
    {
        if (Running.TryRemove(test.UniqueID, out var timer))
            timer.Dispose();
    }

    private static void Cancel(IXunitTest test, ITestContext context)
    {
        Console.Error.WriteLine($"{test.TestDisplayName} has not ended within {Longest.TotalMinutes} minutes: cancelled.");
        context.CancelCurrentTest();
        Thread.Sleep(ToListen);
        if (Running.ContainsKey(test.UniqueID))
            Environment.FailFast($"{test.TestDisplayName} hangs.");
    }
}
