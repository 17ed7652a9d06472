/* demo.h - the demo farm as a fixture: something of everything. */
#pragma once

#include "store/stead-farm-repo.h"
#include "store/stead-store.h"

#define DEMO_TODAY (stead_day_new (2026, 11, 27))

typedef struct
{
  SteadStore *store;
  char       *folder;   /* of its own; emptied at the end */
} Demo;

/* How the farm is looked at. */
typedef struct
{
  const char      *path;       /* of the test */
  SteadUnitSystem  units;
  const char      *currency;
  int              later;      /* days after the last entry */
} DemoView;

void demo_set_up    (Demo *demo, gconstpointer data);
void demo_tear_down (Demo *demo, gconstpointer data);

/* (transfer full): names of what a question or a document of this kind can be of: %NULL, which leaves
 * the choice to it, then all of them, or some of the lots. */
GPtrArray *demo_names (const Demo *demo, const char *of);

/* From here on the farm is asked in these units and this money, so long after its last entry. */
void demo_look (Demo *demo, const DemoView *view);
