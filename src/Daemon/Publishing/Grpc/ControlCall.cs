namespace ScaleLink.Daemon.Publishing.Grpc;

/// <summary>Tells calls that change the bay from those that read.</summary>
internal static class ControlCall
{
    // Services that change the bay end so; calls that only read are in others.
    private const string Changing = "Control";
    private const string Checking = "Check";

    /// <summary>What a call does to the bay, as it is named in the contract; nothing: it only reads.</summary>
    /// <param name="method">Its full name, such as <c>/scalelink.v1.PadControl/ZeroPads</c>.</param>
    public static string? Action(string method) =>
        method.Split('/') is [_, var service, var action] && service.EndsWith(Changing, StringComparison.Ordinal) && !action.StartsWith(Checking, StringComparison.Ordinal) ? action : null;
}
