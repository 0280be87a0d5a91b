using Grpc.Core;
using ScaleLink.Board.Connection;

namespace ScaleLink.Board.Operating;

/// <summary>Asks the daemon one thing at a time, and keeps why it refused the last one.</summary>
internal sealed class Asking(TimeProvider time)
{
    // A step whose answer was lost is asked about for as long as it may be under way (StepAnswers).
    private static readonly TimeSpan Patience = StepAnswers.LongestUnderWay + TimeSpan.FromSeconds(15), Usual = TimeSpan.FromSeconds(6);

    /// <summary>A question is under way; another one has to wait for its answer.</summary>
    public bool IsAtWork { get; private set; }

    /// <summary>Why the last question failed; absent when it did not.</summary>
    public Diagnostic? Trouble { get; private set; }

    /// <summary>The answer; nothing when it was refused, see <see cref="Trouble"/>, or while another question is under way.</summary>
    public async Task<T?> Ask<T>(Func<CancellationToken, AsyncUnaryCall<T>> call) where T : class
    {
        if (IsAtWork)
            return null;
        (IsAtWork, Trouble) = (true, null);
        try
        {
            using var deadline = new CancellationTokenSource(Patience, time);
            using var late = time.CreateTimer(_ => Trouble = DaemonDiagnostics.Late, null, Usual, Timeout.InfiniteTimeSpan);
            var answer = await call(deadline.Token);
            Trouble = null;
            return answer;
        }
        catch (RpcException e)
        {
            Trouble = DaemonDiagnostics.Of(e);
            return null;
        }
        catch (OperationCanceledException)
        {
            Trouble = DaemonDiagnostics.Silent;
            return null;
        }
        finally
        {
            IsAtWork = false;
        }
    }

    public void Forget() => Trouble = null;
}
