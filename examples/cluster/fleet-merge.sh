#!/bin/bash
# Joins the parts that fleet-array.sh wrote, in the order of the fleet, or tells which are missing, doubled or of another build.
#SBATCH --job-name=gablewatt-merge
#SBATCH --ntasks=1
#SBATCH --cpus-per-task=1
#SBATCH --time=00:10:00
#SBATCH --output=parts/merge.log
set -euo pipefail

# Its exit code is that of one run over the whole fleet.
${GABLEWATT:-gablewatt} run-fleet --merge parts/part-*.jsonl --jsonl --out fleet.jsonl --force --quiet
