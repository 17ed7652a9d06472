/* stead-process-cost.c - cost of units when some are unfinished at the count. */
#include "config.h"

#include "core/stead-process-cost.h"

#include <math.h>

static void
add_element (const SteadProcess      *process,
             const SteadElementStage *stage,
             SteadElement             element,
             SteadProcessFigures     *out)
{
  gboolean fifo = process->method == STEAD_PROCESS_FIFO;
  double lost = process->normal_lost_units + process->abnormal_lost_units;
  double begin_done = fifo ? process->begin_units * stage->begin_frac : 0;
  double money = fifo ? stage->added_cents : stage->begin_cents + stage->added_cents;
  double units = process->completed_units + process->end_units * stage->end_frac
                 + lost * stage->lost_frac - begin_done;
  double unit;

  /* An element that costs nothing needs no units: water, or a first step. */
  unit = units > 0 ? money / units : (money == 0 ? 0 : NAN);
  out->equivalent_units[element] = units;
  out->unit_cents[element] = unit;
  out->unit_total_cents += unit;
  out->good_before_loss_cents += unit * (process->completed_units - begin_done)
                                 + (fifo ? stage->begin_cents : 0);
  out->normal_loss_cents += unit * process->normal_lost_units * stage->lost_frac;
  out->abnormal_loss_cents += unit * process->abnormal_lost_units * stage->lost_frac;
  out->end_in_process_cents += unit * process->end_units * stage->end_frac;
  out->total_cents += stage->begin_cents + stage->added_cents;
}

void
stead_process_figures (const SteadProcess  *process,
                       SteadProcessFigures *out)
{
  g_return_if_fail (process != NULL && out != NULL);

  *out = (SteadProcessFigures) { 0 };
  for (SteadElement element = 0; element < STEAD_N_ELEMENTS; element++)
    {
      SteadElementStage stage = process->elements[element];

      if (element == STEAD_ELEMENT_TRANSFERRED)
        stage.begin_frac = stage.end_frac = stage.lost_frac = 1;
      add_element (process, &stage, element, out);
    }
  out->transferred_out_cents = out->good_before_loss_cents + out->normal_loss_cents;
}
