/* stead-paper-error.c - the quark of the layer's error domain. */
#include "config.h"

#include "paper/stead-paper-error.h"

G_DEFINE_QUARK (stead-paper-error-quark, stead_paper_error)
