namespace ScaleLink.Daemon.Setup;

/// <summary>What the command line says for the bay file that is written.</summary>
/// <param name="BayFile">Where it will be, a whole path.</param>
/// <param name="PagePort">Port of the page while the bay is set up.</param>
/// <param name="GrpcPort">Port of gRPC meanwhile.</param>
/// <param name="MqttPort">Port of the broker that the bay will have; nothing: the usual one.</param>
internal sealed record SetupSettings(string BayFile, int PagePort, int GrpcPort, int? MqttPort);
