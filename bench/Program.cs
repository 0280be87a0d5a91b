return args switch
{
    ["coverage", .. var rest] => ScaleLink.Bench.Calibration.CoverageBench.Run(rest),
    _ => 64,
};
