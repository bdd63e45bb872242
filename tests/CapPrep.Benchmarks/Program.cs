Console.WriteLine("CapPrep benchmarks");
