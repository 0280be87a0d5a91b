using ScaleLink.Bench.Calibration;
using ScaleLink.Bench.Convergence;
using ScaleLink.Bench.Decoding;
using ScaleLink.Bench.Settling;

return args switch
{
    ["settling", .. var rest] => SettlingBench.Run(rest),
    ["convergence", .. var rest] => ConvergenceBench.Run(rest),
    ["coverage", .. var rest] => CoverageBench.Run(rest),
    ["decode"] => Ran(DecodeBench.Run),
    ["damage"] => Ran(DamageCampaign.Run) + Ran(ReplyDamageCampaign.Run) + Ran(LineDamageCampaign.Run),
    ["random"] => Ran(() => RandomByteCampaign.Run("all")),
    ["random", "pad-frames" or "modbus" or "text"] => Ran(() => RandomByteCampaign.Run(args[1])),
    _ => Usage(),
};

static int Ran(Action bench)
{
    bench();
    return 0;
}

static int Usage()
{
    Console.Error.WriteLine("""
        Usage: dotnet run -c Release --project bench -- NAME
          settling [trials] [seed]      settled loads against fixed averages, on rocking cars
          convergence [cars] [seed]     steps to the cross-weight target, against two fair hands
          coverage [calibration procedures] [seed]      stated intervals of calibrations against the truth
          decode                        pad frames a second
          random [decoder]              100 million random bytes into each decoder, or into pad-frames, modbus or text alone
          damage                        wrong messages taken as good, from damaged and random bytes, for every decoder
        """);
    return 2;
}
