using Google.Protobuf;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Writes into the log what people do to the bay: who, what, and the refusal if there was one. Reading leaves no line.</summary>
internal sealed class ActionLog(ILogger<ActionLog> log) : Interceptor
{
    private const int LongestName = 64, LongestReason = 400;

    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        if (ControlCall.Action(context.Method) is not { } action)
            return await continuation(request, context);
        try
        {
            var response = await continuation(request, context);
            log.LogInformation("{Who}: {Action}", Who(request as IMessage), action);
            return response;
        }
        catch (RpcException e)
        {
            log.LogInformation("{Who}: {Action} refused: {Why}", Who(request as IMessage), action, PlainText.Clean(e.Status.Detail, LongestReason));
            throw;
        }
    }

    // Most requests name the person themselves, those of a session in a message of their own.
    private static string Who(IMessage? request)
    {
        var who = request is null ? null : Field(request, "who") as string ?? (Field(request, "by") is IMessage by ? Field(by, "who") as string : null);
        return string.IsNullOrWhiteSpace(who) ? "somebody" : PlainText.Clean(who, LongestName);
    }

    private static object? Field(IMessage message, string name) => message.Descriptor.FindFieldByName(name)?.Accessor.GetValue(message);
}
