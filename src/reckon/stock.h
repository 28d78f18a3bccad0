/* reckon/stock.h - cross sections of stock, in square millimeters, and pipe by both
 * weight rules. Geometry; rolled fillets and rounded corners are left out, so that an
 * angle weighs a little less here than its mill table says. */
#ifndef RECKON_STOCK_H
#define RECKON_STOCK_H

double stock_round_mm2(double diameter_mm);
double stock_rectangle_mm2(double width_mm, double thickness_mm);
/* Across the flats: sqrt(3)/2 s^2. */
double stock_hexagon_mm2(double flats_mm);
/* pi (D - t) t. Pipe too: the metal area of its wall. */
double stock_round_tube_mm2(double od_mm, double wall_mm);
/* Sharp corners: 2 t (a + b - 2 t). */
double stock_square_tube_mm2(double side1_mm, double side2_mm, double wall_mm);
/* t (a + b - t). */
double stock_angle_mm2(double leg1_mm, double leg2_mm, double thickness_mm);

/* Pounds per foot of a section. */
double stock_lb_ft(double mm2, double density_lb_in3);
/* Pipe in older tables: 10.68 (D - t) t (before ASME B36.10M of 2000). */
double stock_pipe_old_lb_ft(double od_mm, double wall_mm);

#endif
