using ScaleLink.Api.V1;

namespace Bay.Tests.Proving;

/// <summary>Short ways to ask about a proof.</summary>
internal static class ProofAsking
{
    /// <summary>The proof at a corner as it stands.</summary>
    public static ProofView WatchOnce(this Proofs.ProofsClient proofs, string corner)
    {
        using var call = proofs.WatchProof(new WatchProofRequest { Corner = CornerOf(corner) });
        Assert.True(call.ResponseStream.MoveNext(TestContext.Current.CancellationToken).GetAwaiter().GetResult());
        return call.ResponseStream.Current;
    }

    public static Corner CornerOf(string corner) => Enum.Parse<Corner>(corner, ignoreCase: true);
}
