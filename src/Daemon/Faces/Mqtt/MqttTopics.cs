namespace ScaleLink.Daemon.Faces.Mqtt;

/// <summary>Topics of one bay.</summary>
internal sealed class MqttTopics(string bay)
{
    /// <summary>Under which nobody but the daemon may publish.</summary>
    public const string Root = "scalelink/";

    public string State { get; } = $"{Root}v1/{bay}/state";

    public string Config { get; } = $"{Root}v1/{bay}/config";

    public string Loads { get; } = $"{Root}v1/{bay}/loads";

    public string Session { get; } = $"{Root}v1/{bay}/work-session";

    public string Weighing { get; } = $"{Root}v1/{bay}/weighing";

    public string Pad(Measure.Corner corner) => $"{Root}v1/{bay}/pads/{corner}";
}
