using ScaleLink.Bench.Settling;

return args switch
{
    ["settling", .. var rest] => SettlingBench.Run(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: dotnet run -c Release --project bench -- settling [trials] [seed]");
    return 2;
}
