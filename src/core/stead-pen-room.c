/* stead-pen-room.c - room, feeder and water for the animals of a pen. */
#include "config.h"

#include "core/stead-count.h"
#include "core/stead-pen-room.h"

#include <math.h>

double
stead_pen_need (const SteadPenGroup *groups,
                gsize                n)
{
  double sum = 0;

  g_return_val_if_fail (groups != NULL || n == 0, NAN);

  for (gsize i = 0; i < n; i++)
    {
      if (!(groups[i].head >= 0 && groups[i].each >= 0))
        return NAN;
      sum += groups[i].head * groups[i].each;
    }
  return sum;
}

gint64
stead_pen_capacity (double area_m2,
                    double each_m2)
{
  return stead_count_down (area_m2, each_m2);
}
