using ScaleLink.Bench.Convergence;
using ScaleLink.Bench.Settling;

return args switch
{
    ["settling", .. var rest] => SettlingBench.Run(rest),
    ["convergence", .. var rest] => ConvergenceBench.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: dotnet run -c Release --project bench -- settling [trials] [seed] | convergence [cars] [seed]");
    return 2;
}
