using System.Globalization;
using System.Net;
using System.Net.Sockets;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Journal;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Probing.Toml;

namespace ScaleLink.Daemon.Setup;

/// <summary>Writes the bay file, whole or not at all, and only where none is.</summary>
internal static class NewBayFile
{
    private const int UsualMqtt = 1883;

    /// <returns>The text that was written; the daemon takes it.</returns>
    /// <exception cref="StepRefusedException">SL-485 to SL-488, SL-490.</exception>
    /// <exception cref="DiagnosticException">What is wrong with the text.</exception>
    public static string Write(SetupProgress progress, SetupSettings settings, string bay, double? capacityKg, TimeProvider time)
    {
        Refuse(progress, capacityKg);
        var text = Text(progress, settings, bay, capacityKg, time);
        if (BayFile.Parse(text, settings.BayFile).Mistakes is { Count: > 0 } mistakes)
            throw new DiagnosticException([.. mistakes]);
        Save(settings.BayFile, text);
        return text;
    }

    private static void Refuse(SetupProgress progress, double? capacityKg)
    {
        if (progress.NextCorner is { } without)
            throw Refused(SetupCodes.CornerWithoutDevice, $"{without} has no device.");
        var placed = progress.Devices.Where(d => d.Corner is not null).ToList();
        if (placed.Find(d => !d.CellsAreKnown) is { } unknown)
            throw Refused(SetupCodes.CellsUnknown, $"Which numbers of {unknown.Id} are the load cells of {unknown.Corner} is not known.");
        if (capacityKg is null && placed.Find(d => !d.KnowsCapacity) is { } mute)
            throw Refused(SetupCodes.CapacityMissing, $"The pad of {mute.Corner} does not say what it may carry.");
    }

    private static string Text(SetupProgress progress, SetupSettings settings, string bay, double? capacityKg, TimeProvider time)
    {
        var name = bay.Trim();
        List<string> lines = [$"# Written by setting up, {time.GetUtcNow().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture)} UTC. All keys: docs/configuration.md", $"bay = {TomlText.Quoted(name)}", "", .. Ports(settings)];
        foreach (var device in progress.Devices.Where(d => d.Corner is not null).OrderBy(d => d.Corner))
            lines.AddRange([PlacedBlock.Of(device.Finding, device.Found, $"{device.Corner}", device.Cells, capacityKg), ""]);
        return string.Join('\n', lines);
    }

    private static List<string> Ports(SetupSettings settings)
    {
        List<string> listen = [.. Port("page_port", settings.PagePort, ListenConfiguration.Usual.PagePort), .. Port("grpc_port", settings.GrpcPort, ListenConfiguration.Usual.GrpcPort)];
        if (listen.Count > 0)
            listen = ["[listen]", .. listen, ""];
        if (settings.MqttPort is { } mqtt)
            return [.. listen, "[mqtt]", .. Port("port", mqtt, UsualMqtt), ""];
        return IsFree(UsualMqtt) ? listen : [.. listen, "[mqtt]", $"broker = \"off\"  # port {UsualMqtt} was taken: give the broker another port, or name the external one that has it", ""];
    }

    private static IEnumerable<string> Port(string key, int port, int usual) => port is 0 || port == usual ? [] : [$"{key} = {port.ToString(CultureInfo.InvariantCulture)}"];

    private static bool IsFree(int port)
    {
        try
        {
            using var listener = new TcpListener(IPAddress.Loopback, port);
            listener.Start();
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    // Beside it first: a disk that fills up half way leaves no half file under its name.
    private static void Save(string path, string text)
    {
        var beside = $"{path}.new";
        try
        {
            using (var file = PrivateFiles.Open(beside, FileMode.Create))
            using (var writer = new StreamWriter(file))
            {
                writer.Write(text);
                writer.Flush();
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            var isThere = File.Exists(path);
            Forget(beside);
            throw isThere
                ? new StepRefusedException(SetupCodes.FileThere, $"{path} is there already.", SetupCodes.FileThere.Remedy, e)
                : new StepRefusedException(SetupCodes.FileUnwritable, $"{path} cannot be written: {e.Message}", SetupCodes.FileUnwritable.Remedy, e);
        }
    }

    private static void Forget(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It could not be made either.
        }
    }

    private static StepRefusedException Refused(Code code, Sentence message) => new(code, message, code.Remedy);
}
