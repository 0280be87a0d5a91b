using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary>Fetches a report and writes it.</summary>
internal static class ReportFile
{
    // Numbers of calibration procedures are short and decimal, identities are long.
    private const int LongestNumber = 12;

    /// <summary>Writes one report.</summary>
    /// <exception cref="ClientException">The daemon refuses, or SL-445: the file cannot be written.</exception>
    public static async Task Write(DaemonConnection daemon, Shell shell, string procedure, ExportFormat format, string path, CancellationToken stop)
    {
        var isNumber = procedure.Length <= LongestNumber && procedure.All(char.IsAsciiDigit);
        var request = isNumber ? new ExportProcedureRequest { ProcedureId = procedure, Format = format } : new ExportProcedureRequest { CalibrationId = procedure, Format = format };
        await Save(await daemon.Ask(o => daemon.CalibrationProcedures.ExportProcedureAsync(request, o), stop), shell, path, stop);
    }

    /// <summary>Writes a report that is here.</summary>
    /// <exception cref="ClientException">SL-445: the file cannot be written.</exception>
    public static async Task Save(ExportedFile file, Shell shell, string path, CancellationToken stop)
    {
        if (path == "-")
        {
            shell.Out.Write(file.Content.ToStringUtf8());
            shell.Out.Flush();
            return;
        }

        try
        {
            await File.WriteAllBytesAsync(path, file.Content.ToByteArray(), stop);
            shell.WriteLine($"written: {path}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClientException(new Diagnostic(ClientCodes.FileUnwritable, $"The report cannot be written: {PeerText.Clean(e.Message, 200)}", "Choose another path."), e);
        }
    }
}
