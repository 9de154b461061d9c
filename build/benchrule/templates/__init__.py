"""Templates at full size for one instrument, in millimetres: shapes, and the files they are given in.

``makers.make`` draws a template from the worked calculators; ``pdf``, ``svg`` and ``dxf`` write it.
"""
