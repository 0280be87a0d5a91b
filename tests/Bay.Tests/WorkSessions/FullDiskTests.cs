using System.Diagnostics;
using Grpc.Core;
using ScaleLink.Api.V1;
using Shared;
using Shared.Rig;

namespace Bay.Tests.WorkSessions;

/// <summary>
/// The disk under the ledger runs full in the middle of a session and has room again: a small file system in memory, seen by the daemon alone, and
/// filled up for real.
/// </summary>
public class FullDiskTests
{
    private const int MostSteps = 100;

    [Fact]
    public void A_step_that_finds_no_room_is_refused_and_the_session_goes_on_once_there_is_some()
    {
        IReadOnlyList<string> through = ["unshare", "-Urm", "sh", "-c", "mount -t tmpfs -o size=2m none \"$0\" && exec \"$@\""];
        Assert.SkipUnless(OperatingSystem.IsLinux() && Runs(through), "A file system of one's own needs Linux, and the right to a name space.");
        using var bay = new BayRig();
        bay.Daemon.Dispose();
        var disk = Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "small");
        Directory.CreateDirectory(disk);
        var file = Path.Combine(Path.GetDirectoryName(bay.BayFile)!, "small.toml");
        File.WriteAllText(file, File.ReadAllText(bay.BayFile).Replace("\"ledger.db\"", "\"small/ledger.db\""));
        Session reached;
        using (var daemon = new DaemonProcess([.. through, disk], file, bay.GrpcPort))
        {
            var car = daemon.CarControl.SaveCar(new SaveCarRequest { File = File.ReadAllText(RepositoryRoot.File("docs", "cars", "heron.json")), Who = "crew" });
            daemon.CarControl.UseCar(new UseCarRequest { Name = car.Name, Who = "crew" });
            daemon.WorkSessionControl.StartSession(new StartSessionRequest { By = CrewAtWork.By });

            var seen = $"/proc/{daemon.Process.Id}/root{disk}";
            var ballast = Path.Combine(seen, "ballast");
            Fill(ballast);
            var refused = UntilRefused(daemon);
            Assert.Equal(StatusCode.FailedPrecondition, refused.StatusCode);
            Assert.StartsWith("The step could not be written to the ledger and was not taken: the disk is full. Make room on the disk that holds ", refused.Status.Detail, StringComparison.Ordinal);
            var before = Now(daemon);
            // Nothing is lost by trying, whoever tries.
            Assert.EndsWith("(SL-365)", Assert.Throws<RpcException>(() => Heights(daemon, 200)).Status.Detail, StringComparison.Ordinal);
            Assert.EndsWith("(SL-365)", Assert.Throws<RpcException>(() => daemon.CarControl.ReleaseCar(new ReleaseCarRequest { Who = "crew" })).Status.Detail, StringComparison.Ordinal);
            var sheet = new SaveSheetRequest { Key = new SheetKey { Car = car.Name, Track = "Bramble Moor" }, Who = "crew", Changes = { new SheetChange { Slot = "fuel.fill", Value = "25" } } };
            Assert.EndsWith("(SL-365)", Assert.Throws<RpcException>(() => daemon.SetupSheetControl.SaveSheet(sheet)).Status.Detail, StringComparison.Ordinal);
            Assert.Empty(daemon.SetupSheets.ListSheets(new ListSheetsRequest()).Sheets);
            Assert.Equal((OnRecord(before), car.Name), (OnRecord(Now(daemon)), daemon.Cars.GetCar(new GetCarRequest()).Name));

            File.Delete(ballast);
            reached = Heights(daemon, 300, seen: before.Entry);
            Assert.Equal(before.Entry + 1, reached.Entry);
            Assert.Equal(1u, daemon.SetupSheetControl.SaveSheet(sheet).Version);
            foreach (var part in Directory.GetFiles(seen, "ledger.db*").Where(f => !f.EndsWith(".lock", StringComparison.Ordinal)))
                File.Copy(part, Path.Combine(Path.GetDirectoryName(bay.BayFile)!, Path.GetFileName(part)), overwrite: true);
            // The disk is gone with it.
            daemon.Process.Kill();
        }

        bay.RestartDaemon();
        Assert.Equal(OnRecord(reached), OnRecord(Now(bay.Daemon)));
        Assert.DoesNotContain(bay.Daemon.Pads.ListPads(new ListPadsRequest()).Pads.SelectMany(p => p.Faults), f => f.Code is "SL-361" or "SL-363");
    }

    private static RpcException UntilRefused(DaemonProcess daemon)
    {
        // What the log has taken for itself already has room for some.
        for (var step = 0; step < MostSteps; step++)
            try
            {
                Heights(daemon, 100 + step);
            }
            catch (RpcException e)
            {
                return e;
            }

        throw new InvalidOperationException("The disk is not full.");
    }

    private static Session Heights(DaemonProcess daemon, double mm, ulong? seen = null)
    {
        var by = CrewAtWork.By;
        if (seen is { } entry)
            by.SeenEntry = entry;
        return daemon.WorkSessionControl.EnterHeights(new EnterHeightsRequest { By = by, HeightsMm = new() { Lf = mm, Rf = mm, Lr = mm, Rr = mm } });
    }

    // What the bay sees for itself changes while its pads come to life.
    private static Session OnRecord(Session session)
    {
        var record = session.Clone();
        record.Preparation.Clear();
        record.LastSteps.Clear();
        return record;
    }

    private static Session Now(DaemonProcess daemon) => daemon.WorkSessions.GetSession(new GetSessionRequest()).Session;

    // Large pieces first, then whatever still fits.
    private static void Fill(string ballast)
    {
        using var file = new FileStream(ballast, FileMode.Create, FileAccess.Write, FileShare.Read, bufferSize: 0);
        foreach (var piece in (int[])[65536, 4096, 1])
            try
            {
                while (true)
                    file.Write(new byte[piece]);
            }
            catch (IOException)
            {
                // Full, for pieces of that size.
            }
    }

    private static bool Runs(IReadOnlyList<string> through)
    {
        using var trial = Process.Start(new ProcessStartInfo(through[0], [.. through.Skip(1), "/mnt", "true"]) { RedirectStandardError = true })!;
        trial.WaitForExit();
        return trial.ExitCode == 0;
    }
}
