using Grpc.Core;
using Grpc.Core.Interceptors;
using ScaleLink.Daemon.Contract;

namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>The one place where a refusal becomes the error of a call.</summary>
internal sealed class RefusalInterceptor : Interceptor
{
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(TRequest request, ServerCallContext context, UnaryServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            return await continuation(request, context);
        }
        catch (Exception e) when (ApiErrors.Of(e) is { } error)
        {
            throw error;
        }
    }

    public override async Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request, IServerStreamWriter<TResponse> responseStream, ServerCallContext context, ServerStreamingServerMethod<TRequest, TResponse> continuation)
    {
        try
        {
            await continuation(request, responseStream, context);
        }
        catch (Exception e) when (ApiErrors.Of(e) is { } error)
        {
            throw error;
        }
    }
}
