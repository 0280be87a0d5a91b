namespace ScaleLink.Daemon.Hosting;

/// <summary>Stops the daemon when its standard input closes: the program that started it is gone, however it went.</summary>
internal sealed class ParentWatch : IDisposable
{
    private readonly Stream _input = Console.OpenStandardInput();

    private ParentWatch()
    {
    }

    public static ParentWatch Start(IHostApplicationLifetime lifetime)
    {
        var watch = new ParentWatch();
        new Thread(() => watch.Wait(lifetime)) { IsBackground = true, Name = "parent watch" }.Start();
        return watch;
    }

    public void Dispose() => _input.Dispose();

    private void Wait(IHostApplicationLifetime lifetime)
    {
        Span<byte> ignored = stackalloc byte[64];
        try
        {
            while (_input.Read(ignored) > 0)
            {
            }
        }
        catch (IOException)
        {
            // Closed by the other side: the same as its end.
        }

        lifetime.StopApplication();
    }
}
