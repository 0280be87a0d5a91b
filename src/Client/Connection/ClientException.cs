namespace ScaleLink.Client.Connection;

/// <summary>Raised for a <see cref="Connection.Trouble"/> that stops what was asked for.</summary>
public sealed class ClientException(Trouble trouble, Exception? inner = null) : Exception(trouble?.ToString(), inner)
{
    /// <summary>What is wrong, and what to do next.</summary>
    public Trouble Trouble { get; } = trouble ?? throw new ArgumentNullException(nameof(trouble));
}
