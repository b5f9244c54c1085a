#!/bin/bash
# A fleet of houses as a job array of Slurm, one part of it a task. From the folder of the template:
#
#   mkdir parts
#   array=$(sbatch --parsable --array=1-8 --export=ALL,PARTS=8,TEMPLATE=template.yaml,TABLE=customers.csv fleet-array.sh)
#   sbatch --dependency="afterany:$array" --export=ALL,PARTS=8 fleet-merge.sh
#
# A task that was killed or that its node lost is sent again alone, with the same PARTS; what its journal holds is not worked
# out again:
#
#   sbatch --array=3 --export=ALL,PARTS=8,TEMPLATE=template.yaml,TABLE=customers.csv fleet-array.sh
#
# Parts share no memory: what houses of equal roofs have in common is worked out once in each. A core works out about a
# thousand houses in a minute or two; parts of some hundred houses make the start of a task, half a second, unimportant.
#
#SBATCH --job-name=gablewatt-fleet
#SBATCH --array=1-8
#SBATCH --ntasks=1
#SBATCH --cpus-per-task=1
#SBATCH --time=01:00:00
#SBATCH --requeue
#SBATCH --open-mode=append
#SBATCH --output=parts/part-%a.log
set -euo pipefail

part=$SLURM_ARRAY_TASK_ID
parts=${PARTS:?the number of all parts, also when one is sent again}
template=${TEMPLATE:-template.yaml}
table=${TABLE:-customers.csv}
gablewatt=${GABLEWATT:-gablewatt}

out=parts/part-$part.jsonl
if [[ -e $out ]]; then
  echo "$out is whole already"
  exit 0
fi
code=0
$gablewatt run-fleet "$template" --table "$table" --shard "$part/$parts" --jobs "${SLURM_CPUS_PER_TASK:-1}" \
  --jsonl --out "$out" --journal "parts/part-$part.journal" --resume --quiet || code=$?
# The file is written whole or not at all. Houses that fail a check or cannot be used say so in their lines.
if [[ -e $out ]]; then exit 0; fi
exit "$code"
